import { describe, expect, it } from 'vitest';
import { exampleStyle } from '../../../core/example-style';
import { jobSchema, passesOf } from '../../../core/job';
import { jobOf } from '../../../renderer/state/app-state';
import { addPass } from '../../../renderer/state/edits/add-pass';
import { removePass } from '../../../renderer/state/edits/remove-pass';
import { setBlock } from '../../../renderer/state/edits/set-block';
import { setClearance } from '../../../renderer/state/edits/set-clearance';
import { setDrawing } from '../../../renderer/state/edits/set-drawing';
import { setLead } from '../../../renderer/state/edits/set-lead';
import { setMaterial } from '../../../renderer/state/edits/set-material';
import { setOutput } from '../../../renderer/state/edits/set-output';
import { setPassRule } from '../../../renderer/state/edits/set-pass-rule';
import { setOwnPasses } from '../../../renderer/state/edits/set-own-passes';
import { setSparkGap } from '../../../renderer/state/edits/set-spark-gap';
import { setTechnology } from '../../../renderer/state/edits/set-technology';
import { setPass } from '../../../renderer/state/edits/set-pass';
import { setCorner } from '../../../renderer/state/edits/set-corner';
import { setCornerPath } from '../../../renderer/state/edits/set-corner-path';
import { setRelief } from '../../../renderer/state/edits/set-relief';
import { setCornerRule } from '../../../renderer/state/edits/set-corner-rule';
import { setThickness } from '../../../renderer/state/edits/set-thickness';
import { setUse } from '../../../renderer/state/edits/set-use';
import { setWire } from '../../../renderer/state/edits/set-wire';
import { settleFinding } from '../../../renderer/state/edits/settle-finding';
import { editJob, endTurning } from '../../../renderer/state/job-edit';
import { smallFinding } from '../support/small-finding';
import { openTestApp, testApp, testJob } from '../support/test-app';
import { jobPass } from '../../support/job-pass';

describe('editJob', () => {
  it('makes one step of one change, with a label that says it', () => {
    const app = openTestApp();
    editJob(app, setWire, 0.15);
    const { history, said } = app.store.getState();
    expect(history?.present.wire.diameter).toBe(0.15);
    expect(history?.past).toEqual([{ label: 'Wire 0.15 mm', value: testJob }]);
    expect(said).toBe('Wire 0.15 mm');
  });

  it('makes no step where nothing changes', () => {
    const app = openTestApp();
    editJob(app, setWire, testJob.wire.diameter);
    expect(app.store.getState().history?.past).toHaveLength(0);
    expect(jobOf(app.store.getState())).toBe(testJob);
  });

  it('joins a run of turns, and begins anew after it', () => {
    const app = openTestApp();
    editJob(app, setWire, 0.26, true);
    editJob(app, setWire, 0.27, true);
    expect(app.store.getState().history?.past).toHaveLength(1);
    endTurning(app);
    editJob(app, setWire, 0.28, true);
    expect(app.store.getState().history?.past).toHaveLength(2);
  });

  it('never joins what was typed', () => {
    const app = openTestApp();
    editJob(app, setWire, 0.2);
    editJob(app, setWire, 0.15);
    expect(app.store.getState().history?.past).toHaveLength(2);
  });

  it('keeps the passes of a run apart', () => {
    const app = openTestApp();
    editJob(app, setPass, { part: 'die', pass: 0, change: { feed: 5 } }, true);
    editJob(app, setPass, { part: 'die', pass: 1, change: { feed: 5 } }, true);
    expect(app.store.getState().history?.past).toHaveLength(2);
  });

  it('does nothing without a job', () => {
    const app = testApp();
    editJob(app, setWire, 0.15);
    expect(app.store.getState().history).toBeNull();
  });
});

describe('every edit', () => {
  const decide = smallFinding({ key: 'corner', weight: 'decide' });
  const edited = [
    setMaterial.apply(testJob, 'brass'),
    setThickness.apply(testJob, 2),
    setClearance.apply(testJob, { rule: 'percent', percent: 8 }),
    setWire.apply(testJob, 0.1),
    setPass.apply(testJob, { part: 'die', pass: 1, change: { sparkGap: 0.03 } }),
    addPass.apply(testJob, 'die'),
    setSparkGap.apply(testJob, { role: 'both', sparkGap: 0.03 }),
    setOwnPasses.apply(testJob, { part: 'punch', which: 'own' }),
    setPassRule.apply(testJob, 'typed'),
    setBlock.apply(testJob, { role: 'punch', height: 80 }),
    setTechnology.apply(testJob, { technology: { ...testJob.technology, name: 'ours' }, say: 'Name' }),
    setOutput.apply(testJob, { style: exampleStyle }),
    removePass.apply(testJob, { part: 'die', pass: 0 }),
    setUse.apply(testJob, { contourId: 'c2', use: 'leave out' }),
    setCornerRule.apply(testJob, { role: 'punch', side: 'outside', rule: { rule: 'match' } }),
    setCorner.apply(testJob, { corner: { contourId: 'c1', x: 0, y: 0 }, change: { path: 'sharp' } }),
    setRelief.apply(testJob, { kind: 'land and relief' }),
    setCornerPath.apply(testJob, { miterLimit: 3 }),
    setLead.apply(testJob, { tabLength: 0 }),
    setOutput.apply(testJob, { unit: 'inch' }),
    setDrawing.apply(testJob, { unit: 'inch' }),
    settleFinding.apply(testJob, { finding: decide, reason: 'agreed' }),
  ];

  it('leaves a job that the schema takes, and the old job as it was', () => {
    for (const job of edited) {
      expect(jobSchema.parse(job)).toEqual(job);
      expect(job).not.toEqual(testJob);
      expect(job.drawing.content).toBe(testJob.drawing.content);
    }
    expect(testJob.wire.diameter).toBe(0.25);
  });
});

describe('passes', () => {
  it('adds a skim that leaves nothing, and halves what the one before it leaves', () => {
    const job = addPass.apply(testJob, 'die');
    expect(job.passes.map(({ stockLeft }) => stockLeft)).toEqual([0.015, 0.004, 0.002, 0]);
  });

  it('adds the first skim to a rough cut alone', () => {
    const rough = { ...testJob, passes: [jobPass({ sparkGap: 0.03 })] };
    expect(addPass.apply(rough, 'die').passes.map(({ stockLeft }) => stockLeft)).toEqual([0.005, 0]);
  });

  it('takes a pass out; the last one left then finishes', () => {
    const job = removePass.apply(testJob, { part: 'die', pass: 2 });
    expect(job.passes.map(({ stockLeft }) => stockLeft)).toEqual([0.015, 0]);
    const one = removePass.apply(removePass.apply(job, { part: 'die', pass: 1 }), { part: 'die', pass: 0 });
    expect(one.passes).toHaveLength(1);
  });

  it('follow the table until one of them is typed, and again when asked to', () => {
    const thin = setWire.apply(testJob, 0.1);
    expect(thin.passes[0]?.rate).toBe(18);
    const typed = setPass.apply(thin, { part: 'die', pass: 0, change: { rate: 20 } });
    expect(setWire.apply(typed, 0.25).passes[0]?.rate).toBe(20);
    expect(setPassRule.apply(typed, 'table').passes[0]?.rate).toBe(18);
  });

  it('of the punch are those of the die until it gets its own', () => {
    const both = setSparkGap.apply(testJob, { role: 'both', sparkGap: 0.03 });
    expect(passesOf(both, 'punch').at(-1)?.sparkGap).toBe(0.03);
    const own = setPass.apply(setOwnPasses.apply(both, { part: 'punch', which: 'own' }), {
      part: 'punch',
      pass: 2,
      change: { sparkGap: 0.04 },
    });
    expect(passesOf(own, 'die').at(-1)?.sparkGap).toBe(0.03);
    expect(passesOf(own, 'punch').at(-1)?.sparkGap).toBe(0.04);
    const again = setSparkGap.apply(own, { role: 'both', sparkGap: 0.02 });
    expect([again.passes, passesOf(again, 'punch')].map((passes) => passes.at(-1)?.sparkGap)).toEqual([
      0.02, 0.02,
    ]);
    expect(setOwnPasses.apply(own, { part: 'punch', which: 'as the die' }).punchPasses).toBeNull();
  });
});

describe('settling', () => {
  it('takes a reason for a decision, and gives it back', () => {
    const finding = smallFinding({ key: 'corner', weight: 'decide' });
    const settled = settleFinding.apply(testJob, { finding, reason: '  agreed with the customer ' });
    expect(settled.settled).toEqual({ corner: { reason: 'agreed with the customer' } });
    expect(settleFinding.apply(settled, { finding, reason: null }).settled).toEqual({});
  });

  it('refuses an empty reason and a finding that must stop the job', () => {
    const decide = smallFinding({ key: 'corner', weight: 'decide' });
    expect(settleFinding.apply(testJob, { finding: decide, reason: '  ' })).toBe(testJob);
    const stop = smallFinding({ key: 'gouge', weight: 'stop' });
    expect(settleFinding.apply(testJob, { finding: stop, reason: 'never mind' })).toBe(testJob);
  });
});

describe('the use of a contour', () => {
  it('goes back to the rule', () => {
    const left = setUse.apply(testJob, { contourId: 'c2', use: 'leave out' });
    expect(left.uses).toEqual({ c2: 'leave out' });
    expect(setUse.apply(left, { contourId: 'c2', use: null }).uses).toEqual({});
  });
});

describe('a corner with rules of its own', () => {
  const corner = { contourId: 'c1', x: 4, y: 0 };
  const fillet = { rule: 'radius', radius: 0.4 } as const;

  it('gathers its choices in one place, and is gone when the last is taken back', () => {
    const filleted = setCorner.apply(testJob, { corner, change: { inside: fillet } });
    const both = setCorner.apply(filleted, {
      // As near as the tolerance for a corner's place: the same corner.
      corner: { ...corner, x: 4.005 },
      change: { outside: { rule: 'match' } },
    });
    expect(both.corners.exceptions).toEqual([
      { ...corner, inside: fillet, outside: { rule: 'match' }, path: null },
    ]);
    const other = setCorner.apply(both, {
      corner: { ...corner, contourId: 'c2' },
      change: { path: 'sharp' },
    });
    expect(other.corners.exceptions).toHaveLength(2);
    const back = setCorner.apply(both, { corner, change: { inside: null, outside: null } });
    expect(back.corners.exceptions).toEqual([]);
  });
});
