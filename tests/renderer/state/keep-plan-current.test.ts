import { describe, expect, it } from 'vitest';
import { done, failed } from '../../../core/problem';
import { setDrawing } from '../../../renderer/state/edits/set-drawing';
import { setWire } from '../../../renderer/state/edits/set-wire';
import { newHistory } from '../../../renderer/state/history';
import { editJob } from '../../../renderer/state/job-edit';
import { keepPlanCurrent } from '../../../renderer/state/keep-plan-current';
import { smallFinding } from '../support/small-finding';
import { testApp, testJob, testPlan } from '../support/test-app';

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const opened = { history: newHistory(testJob), fitPending: true };

describe('keepPlanCurrent', () => {
  it('makes a plan of what is open and fits the picture to it once', async () => {
    const app = testApp(opened);
    keepPlanCurrent(app);
    await settled();
    const { made, fitPending, viewport } = app.store.getState();
    expect(made?.job).toBe(testJob);
    expect(fitPending).toBe(false);
    editJob(app, setWire, 0.15);
    await settled();
    expect(app.store.getState().made?.job.wire.diameter).toBe(0.15);
    expect(app.store.getState().viewport).toBe(viewport);
  });

  it('shows a plan before its proofs are made, and then with them', async () => {
    let prove: () => void = () => {};
    const app = testApp(opened, (job, progress) => {
      progress('Proving the programs', 0.8, { ...testPlan([], job), proved: false, released: false });
      return new Promise((resolve) => {
        prove = () => resolve(done(testPlan([], job)));
      });
    });
    keepPlanCurrent(app);
    await settled();
    const { made, fitPending, progress } = app.store.getState();
    expect([made?.plan.proved, made?.plan.released, fitPending]).toEqual([false, false, false]);
    expect(progress?.step).toBe('Proving the programs');
    prove();
    await settled();
    const after = app.store.getState();
    expect([after.made?.plan.proved, after.made?.plan.released, after.progress]).toEqual([true, true, null]);
  });

  it('keeps the last good plan beside a problem, and drops the problem with its cause', async () => {
    const app = testApp(opened, (job) =>
      job.wire.diameter > 1
        ? failed('wire-too-wide', 'The wire is too wide', '', 'Take a thinner one.')
        : done(testPlan([], job)),
    );
    keepPlanCurrent(app);
    await settled();
    editJob(app, setWire, 2);
    await settled();
    expect(app.store.getState().problem?.code).toBe('wire-too-wide');
    expect(app.store.getState().made?.job).toBe(testJob);
    editJob(app, setWire, 0.2);
    await settled();
    expect(app.store.getState().problem).toBeNull();
  });

  it('asks for the unit with the size of the drawing', async () => {
    const app = testApp(opened, (job) =>
      job.drawing.unit === null
        ? failed('units-needed', 'The drawing states no unit', '', 'Say which.')
        : done(testPlan([], job)),
    );
    keepPlanCurrent(app);
    await settled();
    expect(app.store.getState().unitAsked).toBe(true);
    expect(app.store.getState().survey?.units.map(({ unit }) => unit)).toEqual(['mm', 'inch']);
    editJob(app, setDrawing, { unit: 'inch' });
    await settled();
    const { unitAsked, problem, made } = app.store.getState();
    expect([unitAsked, problem]).toEqual([false, null]);
    expect(made?.job.drawing.unit).toBe('inch');
  });

  it('lets go of a finding that vanished', async () => {
    const corner = smallFinding({ key: 'corner', weight: 'decide' });
    const app = testApp(opened, (job) => done(testPlan(job.wire.diameter > 0.2 ? [corner] : [], job)));
    keepPlanCurrent(app);
    await settled();
    app.store.setState({ selected: { kind: 'finding', key: 'corner' } });
    editJob(app, setWire, 0.21);
    await settled();
    expect(app.store.getState().selected).not.toBeNull();
    editJob(app, setWire, 0.1);
    await settled();
    expect(app.store.getState().selected).toBeNull();
  });
});
