import { describe, expect, it } from 'vitest';
import { failed } from '../../../core/problem';
import { isChanged, jobOf } from '../../../renderer/state/app-state';
import { exportFilesCommand } from '../../../renderer/state/commands/export-files';
import { fitViewCommand } from '../../../renderer/state/commands/fit-view';
import { openFileCommand } from '../../../renderer/state/commands/open-file';
import { redoCommand } from '../../../renderer/state/commands/redo';
import { saveJobCommand } from '../../../renderer/state/commands/save-job';
import { saveJobAsCommand } from '../../../renderer/state/commands/save-job-as';
import { nextFindingCommand, previousFindingCommand } from '../../../renderer/state/commands/step-findings';
import { switchThemeCommand } from '../../../renderer/state/commands/switch-theme';
import { switchUnitCommand } from '../../../renderer/state/commands/switch-unit';
import { undoCommand } from '../../../renderer/state/commands/undo';
import { zoomInCommand, zoomOutCommand } from '../../../renderer/state/commands/zoom';
import { setWire } from '../../../renderer/state/edits/set-wire';
import { editJob } from '../../../renderer/state/job-edit';
import { openFile } from '../../../renderer/state/open-file';
import { visibleBox } from '../../../renderer/state/viewport';
import { smallFinding } from '../support/small-finding';
import { openTestApp, testApp, testJob, type TestApp } from '../support/test-app';

const drawing = (name: string) => ({ name, bytes: new TextEncoder().encode('0\nEOF\n'), token: null });
const present = (app: TestApp) => jobOf(app.store.getState());

describe('undo and redo', () => {
  it('name what they do and bring it back', () => {
    const app = openTestApp();
    expect(undoCommand.enabled(app.store.getState())).toBe(false);
    editJob(app, setWire, 0.15);
    expect(undoCommand.label(app.store.getState())).toBe('Undo: Wire 0.15 mm');
    void undoCommand.run(app);
    expect(present(app)?.wire.diameter).toBe(0.25);
    expect(redoCommand.label(app.store.getState())).toBe('Redo: Wire 0.15 mm');
    void redoCommand.run(app);
    expect(present(app)?.wire.diameter).toBe(0.15);
  });

  it('keep redo through zooming, selecting and switching units', () => {
    const app = openTestApp();
    editJob(app, setWire, 0.15);
    void undoCommand.run(app);
    void zoomInCommand.run(app);
    void switchUnitCommand.run(app);
    app.store.setState({ selected: { kind: 'member', id: 'blank-1-die' } });
    expect(redoCommand.enabled(app.store.getState())).toBe(true);
  });
});

describe('open', () => {
  it('opens the chosen drawing as a new job', async () => {
    const app = testApp();
    app.host.nextFile = { ok: true, value: drawing('spring.dxf') };
    await openFileCommand.run(app);
    expect(present(app)?.name).toBe('spring');
    expect(present(app)?.drawing.content).toBe('0\nEOF\n');
    expect(isChanged(app.store.getState())).toBe(false);
  });

  it('changes nothing when cancelled', async () => {
    const app = openTestApp();
    const before = app.store.getState();
    await openFileCommand.run(app);
    expect(app.store.getState()).toBe(before);
  });

  it('asks before changes would be lost', () => {
    const app = openTestApp();
    editJob(app, setWire, 0.15);
    openFile(app, drawing('other.dxf'));
    expect(app.store.getState().waiting?.name).toBe('other.dxf');
    expect(present(app)?.name).toBe('bracket');
  });

  it('keeps the open job when a job file can not be read', () => {
    const app = openTestApp();
    openFile(app, { ...drawing('broken.diewright.json'), bytes: new TextEncoder().encode('{') });
    expect(app.store.getState().trouble?.what).toBeTruthy();
    expect(present(app)).toBe(testJob);
    openFile(app, { ...drawing('latin.diewright.json'), bytes: Uint8Array.of(0x7b, 0xe4, 0x7d) });
    expect(app.store.getState().trouble?.code).toBe('job-not-text');
  });
});

describe('save', () => {
  it('asks for a place once, then goes back to it', async () => {
    const app = openTestApp();
    editJob(app, setWire, 0.15);
    expect(isChanged(app.store.getState())).toBe(true);
    await saveJobCommand.run(app);
    expect(isChanged(app.store.getState())).toBe(false);
    await saveJobCommand.run(app);
    await saveJobAsCommand.run(app);
    expect(app.host.saved.map(({ token }) => token)).toEqual([null, 'place-1', null]);
    expect(app.host.saved[0]?.suggestedName).toBe('bracket.diewright.json');
  });

  it('writes what opens again as the same job', async () => {
    const app = openTestApp();
    editJob(app, setWire, 0.15);
    await saveJobCommand.run(app);
    const bytes = new TextEncoder().encode(app.host.saved[0]?.text);
    const other = testApp();
    openFile(other, { name: 'bracket.diewright.json', bytes, token: 'place-2' });
    expect(present(other)).toEqual(present(app));
    expect(other.store.getState().file.token).toBe('place-2');
  });

  it('says why it failed and still counts the job as changed', async () => {
    const app = openTestApp();
    editJob(app, setWire, 0.15);
    app.host.refusal = failed('disk-full', 'The disk is full', '', 'Make room.');
    await saveJobCommand.run(app);
    expect(app.store.getState().trouble?.code).toBe('disk-full');
    expect(isChanged(app.store.getState())).toBe(true);
  });

  it('counts a change made while saving as not saved', async () => {
    const app = openTestApp();
    editJob(app, setWire, 0.15);
    const saving = saveJobCommand.run(app);
    editJob(app, setWire, 0.1);
    await saving;
    expect(isChanged(app.store.getState())).toBe(true);
  });
});

describe('export', () => {
  it('hands all files to the host and says where they went', async () => {
    const app = openTestApp();
    await exportFilesCommand.run(app);
    expect(app.host.exported).toEqual([
      { folderName: 'bracket', files: [{ name: 'bracket.dxf', text: '0\nEOF\n' }] },
    ]);
    expect(app.store.getState().said).toBe('Wrote 1 files to out');
  });

  it('says DRAFT while findings are open', () => {
    const app = openTestApp([smallFinding({ key: 'corner', weight: 'decide' })]);
    expect(exportFilesCommand.label(app.store.getState())).toContain('DRAFT');
    expect(exportFilesCommand.label(openTestApp().store.getState())).not.toContain('DRAFT');
  });

  it('is off until the picture is that of the job', () => {
    const app = openTestApp();
    expect(exportFilesCommand.enabled(app.store.getState())).toBe(true);
    editJob(app, setWire, 0.15);
    expect(exportFilesCommand.enabled(app.store.getState())).toBe(false);
  });
});

describe('view', () => {
  it('fits the whole plan, start holes included', () => {
    const app = openTestApp();
    void fitViewCommand.run(app);
    const { viewport, canvasSize } = app.store.getState();
    const seen = visibleBox(viewport, canvasSize);
    // The punch's start hole: 5 mm below a part 10 mm high, 3 mm wide.
    expect(seen.minY).toBeLessThan(-5 - 5 - 1.5);
    expect(seen.maxY).toBeGreaterThan(5);
  });

  it('zooms in and out by the same step', () => {
    const app = openTestApp();
    const { scale } = app.store.getState().viewport;
    void zoomInCommand.run(app);
    expect(app.store.getState().viewport.scale).toBeGreaterThan(scale);
    void zoomOutCommand.run(app);
    expect(app.store.getState().viewport.scale).toBeCloseTo(scale, 12);
  });

  it('goes round the themes', () => {
    const app = openTestApp();
    const seen = [0, 1, 2].map(() => {
      void switchThemeCommand.run(app);
      return app.store.getState().theme;
    });
    expect(seen).toEqual(['light', 'dark', 'system']);
  });
});

describe('stepping through findings', () => {
  const place = { x: 3, y: 4, reach: 0.5 };
  const findings = [
    smallFinding({ key: 'a', weight: 'stop', place }),
    smallFinding({ key: 'b', weight: 'decide', place: { ...place, x: 7 } }),
    smallFinding({ key: 'c', weight: 'note' }),
  ];
  const selectedKey = (app: TestApp) => {
    const { selected } = app.store.getState();
    return selected?.kind === 'finding' ? selected.key : null;
  };

  it('goes round the open ones and shows each place', () => {
    const app = openTestApp(findings);
    void nextFindingCommand.run(app);
    expect(selectedKey(app)).toBe('a');
    expect(app.store.getState().viewport.centre).toEqual({ x: 3, y: 4 });
    void nextFindingCommand.run(app);
    expect(selectedKey(app)).toBe('b');
    void nextFindingCommand.run(app);
    expect(selectedKey(app)).toBe('a');
    void previousFindingCommand.run(app);
    expect(selectedKey(app)).toBe('b');
  });

  it('starts at the last one going back', () => {
    const app = openTestApp(findings);
    void previousFindingCommand.run(app);
    expect(selectedKey(app)).toBe('b');
  });

  it('is off where nothing is open', () => {
    expect(nextFindingCommand.enabled(openTestApp().store.getState())).toBe(false);
  });
});
