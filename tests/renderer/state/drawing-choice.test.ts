import { describe, expect, it } from 'vitest';
import { jobOf } from '../../../renderer/state/app-state';
import type { App } from '../../../renderer/state/app-store';
import { fitViewCommand } from '../../../renderer/state/commands/fit-view';
import { goOnCommand } from '../../../renderer/state/commands/go-on';
import { stopCalculationCommand } from '../../../renderer/state/commands/stop-calculation';
import { switchPaneCommand } from '../../../renderer/state/commands/switch-pane';
import { takeContourCommand } from '../../../renderer/state/commands/take-contour';
import { undoCommand } from '../../../renderer/state/commands/undo';
import { setChoice } from '../../../renderer/state/edits/set-choice';
import { setDrawing } from '../../../renderer/state/edits/set-drawing';
import { setSizeShift } from '../../../renderer/state/edits/set-size-shift';
import { switchRepair } from '../../../renderer/state/edits/switch-repair';
import { editJob } from '../../../renderer/state/job-edit';
import { selectTarget } from '../../../renderer/state/select-target';
import { targetOfRepair } from '../../../renderer/state/target';
import { toggleContour } from '../../../renderer/state/toggle-contour';
import { CoreClient } from '../../../renderer/worker/core-client';
import { circle, dxf, line, square, type Groups } from '../../core/drawing/drawn';
import { drawingApp } from '../support/drawing-app';
import { testApp, testJob, testPlan, testSurvey } from '../support/test-app';
import { newHistory } from '../../../renderer/state/history';
import { createApp } from '../../../renderer/state/app-store';
import { keepPlanCurrent } from '../../../renderer/state/keep-plan-current';
import { done } from '../../../core/problem';
import { memoryHost } from '../support/memory-host';
import { noInspection } from '../support/no-inspection';

const part: Groups = [...square(0, 0, 40), ...circle(20, 20, 5), ...circle(100, 0, 8, 'CONSTRUCTION')];
const present = (app: App) => jobOf(app.store.getState());
const contours = (app: App) => app.store.getState().survey?.drawing?.contours.map(({ id }) => id);

describe('taking contours and leaving them out', () => {
  it('changes the job, and back again leaves no trace in it', async () => {
    const app = await drawingApp(dxf({ entities: part }));
    expect(contours(app)).toEqual(['c1', 'c2']);
    toggleContour(app, 'c3');
    await app.settled();
    expect(present(app)?.drawing.choice.contours).toEqual({ c3: 'take' });
    expect(contours(app)).toContain('c3');
    toggleContour(app, 'c3');
    await app.settled();
    expect(present(app)?.drawing.choice.contours).toEqual({});
    expect(contours(app)).toEqual(['c1', 'c2']);
  });

  it('by its key, on the contour that is picked out', async () => {
    const app = await drawingApp(dxf({ entities: part }));
    expect(takeContourCommand.enabled(app.store.getState())).toBe(false);
    selectTarget(app, { kind: 'contour', id: 'c2' }, true);
    expect(app.store.getState().pane).toBe('drawing');
    expect(takeContourCommand.label(app.store.getState())).toBe('Leave contour c2 out');
    void takeContourCommand.run(app);
    await app.settled();
    expect(contours(app)).toEqual(['c1']);
    expect(takeContourCommand.label(app.store.getState())).toBe('Take contour c2');
    void undoCommand.run(app);
    await app.settled();
    expect(contours(app)).toEqual(['c1', 'c2']);
  });
});

describe('another reading of the drawing', () => {
  const open: Groups = [
    ...[...line(0, 0, 40, 0), ...line(40, 0, 40, 30), ...line(40, 30.03, 0, 30), ...line(0, 30, 0, 0)],
    ...circle(100, 0, 10),
  ];

  it('keeps what was chosen for a contour on it, and a step back brings the names back', async () => {
    const app = await drawingApp(dxf({ entities: open }));
    editJob(app, setSizeShift, { contourId: 'c1', sizeShift: 0.02 });
    await app.settled();
    editJob(app, setDrawing, { gapTolerance: 0.05 });
    await app.settled();
    expect(contours(app)).toEqual(['c1', 'c2']);
    // The disc, drawn with a radius of 10, is now the second.
    expect(present(app)?.sizeShifts).toEqual({ c2: 0.02 });
    expect(app.store.getState().made?.job).toBe(present(app));
    void undoCommand.run(app);
    await app.settled();
    expect(present(app)?.sizeShifts).toEqual({ c1: 0.02 });
    editJob(app, setDrawing, { gapTolerance: 0.06 });
    await app.settled();
    expect(present(app)?.sizeShifts).toEqual({ c2: 0.02 });
  });

  it('says what is gone with its contour', async () => {
    const app = await drawingApp(dxf({ entities: open }));
    editJob(app, setDrawing, { gapTolerance: 0.05 });
    await app.settled();
    editJob(app, setSizeShift, { contourId: 'c1', sizeShift: 0.02 });
    await app.settled();
    editJob(app, switchRepair, { kind: 'gap', isOn: false });
    await app.settled();
    expect(present(app)?.drawing.repairsOff).toEqual(['gap']);
    expect(present(app)?.sizeShifts).toEqual({});
    expect(app.store.getState().said).toBe(
      'Contour c1 is no longer there, and what was chosen for it is gone',
    );
  });

  it('that leaves no contour shows the drawing, its lines still there', async () => {
    const app = await drawingApp(dxf({ entities: open }));
    editJob(app, setChoice, { layers: ['NONE'] });
    await app.settled();
    const { problem, pane, survey } = app.store.getState();
    expect(problem?.code).toBe('no-closed-contour');
    expect(pane).toBe('drawing');
    expect(survey?.drawing).toBeNull();
    expect(survey?.lines.length).toBeGreaterThan(0);
  });
});

describe('looking at a repair', () => {
  it('goes so near that its gap can be seen', async () => {
    const gappy = [
      ...[...line(0, 0, 40, 0), ...line(40, 0.004, 40, 30), ...line(40, 30, 0, 30), ...line(0, 30, 0, 0)],
    ];
    const app = await drawingApp(dxf({ entities: gappy }));
    const [repair] = app.store.getState().survey?.drawing?.repairs ?? [];
    if (!repair) throw new Error('the gap was not closed');
    selectTarget(app, targetOfRepair(repair), true);
    const { viewport, pane } = app.store.getState();
    expect(pane).toBe('drawing');
    expect(viewport.centre).toMatchObject({ x: 40, y: expect.closeTo(0.002, 12) });
    // The gap of 0.004 mm is wider than ten pixels.
    expect(viewport.scale * 0.004).toBeGreaterThan(10);
  });
});

describe('the picture', () => {
  it('shows the whole sheet where the drawing is looked at, and the tools where they are', async () => {
    const app = await drawingApp(dxf({ entities: part }));
    const toScale = () => app.store.getState().viewport.scale;
    void fitViewCommand.run(app);
    const tools = toScale();
    void switchPaneCommand.run(app);
    void fitViewCommand.run(app);
    expect(toScale()).toBeLessThan(tools);
  });
});

describe('stopping', () => {
  it('lets the worker go, keeps the job, and goes on when told to', async () => {
    let ended = 0;
    let hang = true;
    const connect = () => ({
      ...noInspection,
      plan: () => (hang ? new Promise<never>(() => {}) : Promise.resolve(done(testPlan()))),
      files: () => Promise.resolve(done([])),
      survey: (_: unknown, progress: (step: string, fraction: number) => void) => {
        progress('Reading the drawing', 0.5);
        return Promise.resolve(done(testSurvey()));
      },
      program: () => Promise.reject(new Error('not asked here')),
      verify: () => Promise.reject(new Error('not asked here')),
      died: new Promise<never>(() => {}),
      end: () => void ended++,
    });
    const app = createApp(memoryHost(), new CoreClient(connect), { history: newHistory(testJob) });
    keepPlanCurrent(app);
    const turn = () => new Promise((resolve) => setTimeout(resolve, 0));
    await turn();
    const { progress, survey } = app.store.getState();
    expect(progress).toEqual({ step: 'Reading the drawing', fraction: 0.5 });
    expect(survey).not.toBeNull();
    void stopCalculationCommand.run(app);
    await turn();
    expect(ended).toBeGreaterThan(0);
    expect(app.store.getState()).toMatchObject({
      progress: null,
      problem: { code: 'calculation-stopped-by-hand', where: 'Reading the drawing' },
    });
    expect(present(app)).toBe(testJob);
    expect(stopCalculationCommand.enabled(app.store.getState())).toBe(false);
    hang = false;
    expect(goOnCommand.enabled(app.store.getState())).toBe(true);
    await goOnCommand.run(app);
    expect(app.store.getState().problem).toBeNull();
    expect(app.store.getState().made).not.toBeNull();
  });

  it('there is nothing to stop or to go on with while all is done', () => {
    const state = testApp().store.getState();
    expect([stopCalculationCommand.enabled(state), goOnCommand.enabled(state)]).toEqual([false, false]);
  });
});
