import { describe, expect, it } from 'vitest';
import type { Job } from '../../../core/job';
import type { Revision } from '../../../core/revision';
import { jobOf } from '../../../renderer/state/app-state';
import { takeOver } from '../../../renderer/state/compare-revision';
import { addPoints, importPoints } from '../../../renderer/state/import-points';
import { pickPoint } from '../../../renderer/state/pick-point';
import { resized } from '../../../renderer/state/resized';
import { setInspect } from '../../../renderer/state/set-inspect';
import { snapAt } from '../../../renderer/state/snap-at';
import { planBox } from '../../../renderer/state/plan-box';
import { fitted } from '../../../renderer/state/viewport';
import { testApp, testJob, testPlan } from '../support/test-app';
import { newHistory } from '../../../renderer/state/history';

const list = (text: string) => ({ name: 'run 3.csv', bytes: new TextEncoder().encode(text), token: null });

const opened = () =>
  testApp({ history: newHistory(testJob), made: { job: testJob, plan: testPlan() }, pane: 'inspect' });

const sets = (app: ReturnType<typeof opened>) => jobOf(app.store.getState())?.inspection.measured ?? [];

describe('a list of measured points', () => {
  it('that states its unit goes to the members that it names', () => {
    const app = opened();
    importPoints(app, list('x (mm),y (mm),id,feature\n10,1,P1,punch\n-10,1,P2,punch\n10,2,D1,die\n'));
    expect(sets(app).map(({ target, points }) => [target, points.map(({ id }) => id)])).toEqual([
      [testPlan().pairs[0]?.punch.id, ['P1', 'P2']],
      [testPlan().pairs[0]?.die.id, ['D1']],
    ]);
    expect(app.store.getState().inspect).toMatchObject({ section: 'points', set: 0, waitingPoints: null });
  });

  it('without a unit waits for it, with the one in which it is as large as the part', () => {
    const app = opened();
    // 20 × 10 mm in inches.
    const text = '0.393701;0.19685\n-0.393701;-0.19685\n0.393701;-0.19685\n';
    importPoints(app, list(text));
    const { waitingPoints } = app.store.getState().inspect;
    expect(waitingPoints?.likely).toBe('inch');
    expect(sets(app)).toEqual([]);
    addPoints(app, 'run 3.csv', waitingPoints?.points ?? [], 'inch');
    expect(sets(app)[0]?.points[0]?.x).toBeCloseTo(10, 4);
    expect(sets(app)[0]).toMatchObject({ name: 'run 3', target: 'part' });
    expect(app.store.getState().inspect.waitingPoints).toBeNull();
  });

  it('that is none is a problem with its file, and changes nothing', () => {
    const app = opened();
    importPoints(app, list('1,2\n3,four\n'));
    expect(app.store.getState().trouble?.where).toContain('run 3.csv');
    expect(jobOf(app.store.getState())).toBe(testJob);
  });
});

describe('a revision', () => {
  const revisionTo = (job: Job): Revision => ({
    taken: { job, lost: [] },
    older: [],
    newer: [],
    places: [],
    settings: [],
    dispositions: [],
  });

  it('is taken over with what stays accepted', () => {
    const app = opened();
    const newer = { ...testJob, name: 'bracket B' };
    takeOver(app, {
      revision: revisionTo(newer),
      kind: 'new drawing',
      fileName: 'b.dxf',
      of: testJob,
    });
    expect(jobOf(app.store.getState())?.name).toBe('bracket B');
  });

  it('is not taken over once the job was edited: the edit would be lost', () => {
    const app = opened();
    const edited = { ...testJob, name: 'edited' };
    app.store.setState({ history: newHistory(edited) });
    takeOver(app, {
      revision: revisionTo({ ...testJob, name: 'bracket B' }),
      kind: 'new drawing',
      fileName: 'b.dxf',
      of: testJob,
    });
    expect(jobOf(app.store.getState())).toBe(edited);
  });
});

describe('measuring', () => {
  it('a distance between two picks, each held by what is near', () => {
    const app = opened();
    setInspect(app, { section: 'measuring', tool: 'distance' });
    // The outline's edge ends are at ± 9.5 and ± 5; pointed at a little beside them.
    for (const x of [-9.49, 9.49]) {
      const place = { x, y: 5.01 };
      pickPoint(app, snapAt(app, place), place);
    }
    const { reading, picks } = app.store.getState().inspect;
    expect(picks).toEqual([]);
    expect(reading).toMatchObject({ kind: 'distance' });
    expect(reading?.kind === 'distance' && reading.to.x - reading.from.x).toBeCloseTo(19, 9);
  });

  it('a radius on an arc, and a word where there is none', () => {
    const app = opened();
    setInspect(app, { section: 'measuring', tool: 'radius' });
    const open = { x: 0, y: 0 };
    pickPoint(app, snapAt(app, open), open);
    expect(app.store.getState().inspect.reading).toBeNull();
    expect(app.store.getState().said).toBe('Pick a place on an arc');
    // The outer corner's middle: (9.5, 4.5) and 0.5 away at 45°.
    const corner = { x: 9.5 + 0.5 * Math.SQRT1_2, y: 4.5 + 0.5 * Math.SQRT1_2 };
    pickPoint(app, snapAt(app, corner), corner);
    const { reading } = app.store.getState().inspect;
    expect(
      reading?.kind === 'radius' &&
        Math.hypot(reading.at.x - reading.centre.x, reading.at.y - reading.centre.y),
    ).toBeCloseTo(0.5, 6);
  });

  it('the gap of a pair, from whichever member is picked', () => {
    const app = opened();
    setInspect(app, { section: 'measuring', tool: 'gap' });
    const place = { x: 0, y: 5 };
    pickPoint(app, snapAt(app, place), place);
    const { reading } = app.store.getState().inspect;
    // testPlan: 0.06 clearance per side.
    expect(
      reading?.kind === 'gap' && Math.hypot(reading.to.x - reading.from.x, reading.to.y - reading.from.y),
    ).toBeCloseTo(0.06, 9);
  });
});

describe('a canvas in another size', () => {
  const sizes = [
    { width: 800, height: 600 },
    { width: 800, height: 480 },
  ] as const;

  it('fits anew what was fitted, and leaves another view as it is', () => {
    const app = opened();
    const box = planBox(testPlan());
    const at = (viewport: ReturnType<typeof fitted>) =>
      resized({ ...app.store.getState(), viewport, canvasSize: sizes[0] }, sizes[1]);
    const whole = fitted(box, sizes[0]);
    expect(at(whole)).toEqual({ canvasSize: sizes[1], viewport: fitted(box, sizes[1]) });
    expect(at({ ...whole, scale: 3 * whole.scale })).toEqual({ canvasSize: sizes[1] });
  });
});
