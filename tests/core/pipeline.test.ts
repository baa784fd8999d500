import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readJobFile, writeJobFile } from '../../core/job-file';
import { jobOnDrawing } from '../../core/job-file';
import type { Job } from '../../core/job';
import { createPipeline } from '../../core/pipeline';
import type { Plan } from '../../core/plan';
import { jobOn, dxfOf } from '../support/dxf-of';
import { circle, polygon, roundedRectangle, square } from '../support/shapes';
import { jobPass } from '../support/job-pass';

function planOf(job: Job): Plan {
  const plan = createPipeline().plan(job);
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value;
}

const problemOf = (job: Job): string => {
  const plan = createPipeline().plan(job);
  return plan.ok ? 'none' : plan.problem.code;
};

const codes = (plan: Plan, weight: string) =>
  plan.findings.filter((f) => f.weight === weight).map(({ code }) => code);
const rounded = [roundedRectangle(20, 10, 1)];

describe('the pipeline on a bad job: one clear problem', () => {
  it.each([
    ['NaN thickness', { stock: { material: 'brass', thickness: NaN } }, 'job-field'],
    ['zero thickness', { stock: { material: 'brass', thickness: 0 } }, 'job-field'],
    ['negative thickness', { stock: { material: 'brass', thickness: -1 } }, 'job-field'],
    ['unknown material', { stock: { material: 'unobtainium', thickness: 1 } }, 'stock-unknown'],
    [
      'a last pass that leaves stock',
      { passes: [{ sparkGap: 0.02, stockLeft: 0.01, feed: 5 }] },
      'passes-leave-stock',
    ],
    [
      'a skim farther out than the rough cut',
      {
        passes: [jobPass({ sparkGap: 0.02 }), { sparkGap: 0.03, stockLeft: 0, feed: 5 }],
      },
      'passes-out-of-order',
    ],
    ['no pass', { passes: [] }, 'job-field'],
  ])('%s', (_, changes, code) => {
    expect(problemOf(jobOn(rounded, changes as Partial<Job>))).toBe(code);
  });

  it('a drawing without a unit asks for it, and an answer settles it', () => {
    const bytes = new TextEncoder().encode(dxfOf(rounded, 0));
    const job = jobOnDrawing('no-unit.dxf', bytes);
    expect(problemOf(job)).toBe('units-needed');
    const answered: Job = { ...job, drawing: { ...job.drawing, unit: 'inch' } };
    expect(planOf(answered).summary.partSize.width).toBeCloseTo(20 * 25.4, 9);
    const survey = createPipeline().survey(job);
    expect(survey.ok && survey.value.units.slice(0, 2)).toMatchObject([
      { unit: 'mm', width: 20, height: 10, isStated: false },
      { unit: 'inch', width: 508, height: 254, isStated: false },
    ]);
  });

  it('a drawing without a closed contour', () => {
    const job = jobOnDrawing('empty.dxf', new TextEncoder().encode(dxfOf([])));
    expect(createPipeline().plan(job).ok).toBe(false);
  });
});

describe('findings of whole jobs', () => {
  it('a wire wider than the opening stops the job', () => {
    const plan = planOf(jobOn([square(20), circle(0.05, 10, 10)], {}));
    expect(codes(plan, 'stop')).toContain('wire-too-wide');
    expect(plan.released).toBe(false);
  });

  it('a clearance larger than a feature stops the job', () => {
    const tongue = polygon([0, 0], [10, 0], [10, 4.9], [16, 4.9], [16, 5.1], [10, 5.1], [10, 10], [0, 10]);
    const plan = planOf(jobOn([tongue], { clearance: { rule: 'typed', perSide: 0.15 } }));
    expect(codes(plan, 'stop')).toContain('clearance-too-large');
    const all = planOf(jobOn([square(1)], { clearance: { rule: 'typed', perSide: 0.6 } }));
    expect(codes(all, 'stop')).toContain('clearance-too-large');
  });

  it('a slot narrower than the kerf is found by the as-cut operation alone, with the wire that would cure it', () => {
    const slotted = polygon([0, 0], [20, 0], [20, 10], [10.1, 10], [10.1, 4], [9.9, 4], [9.9, 10], [0, 10]);
    const plan = planOf(jobOn([slotted], { clearance: { rule: 'typed', perSide: 0.01 } }));
    const slot = plan.findings.find(({ code, memberId }) => code === 'slot' && memberId === 'blank-c1-punch');
    expect(slot?.cures.find(({ kind }) => kind === 'wire')).toMatchObject({ diameter: 0.15 });
    const thinner = planOf(
      jobOn([slotted], { clearance: { rule: 'typed', perSide: 0.01 }, wire: { diameter: 0.15 } }),
    );
    expect(thinner.findings.some(({ code }) => code === 'slot')).toBe(false);
  });

  it('a pass that breaks up in a neck which the finishing pass goes through', () => {
    const neck = 0.3;
    const dumbbell = polygon(
      [0, 0],
      [10, 0],
      [10, 5 - neck / 2],
      [14, 5 - neck / 2],
      [14, 0],
      [24, 0],
      [24, 10],
      [14, 10],
      [14, 5 + neck / 2],
      [10, 5 + neck / 2],
      [10, 10],
      [0, 10],
    );
    const passes = [jobPass({ sparkGap: 0.02, stockLeft: 0.05 }), jobPass({ sparkGap: 0.02 })];
    const plan = planOf(jobOn([dumbbell], { passes, clearance: { rule: 'typed', perSide: 0.01 } }));
    expect(plan.findings.some(({ title }) => title === 'Pass 1 does not get through a neck')).toBe(true);
  });

  it('a start hole that does not fit', () => {
    const plan = planOf(jobOn([square(20), circle(0.45, 10, 10)], {}));
    const hole = plan.findings.find(({ code }) => code === 'start-hole');
    expect(hole?.memberId).toBe('pierce-c2-die');
  });

  it('a settled finding releases the job, until its numbers change', () => {
    const job = jobOn([square(20)], { clearance: { rule: 'typed', perSide: 0.2 } });
    const plan = planOf(job);
    expect(codes(plan, 'stop')).toEqual([]);
    expect(plan.released).toBe(false);
    const settled = Object.fromEntries(
      plan.findings.filter(({ weight }) => weight === 'decide').map(({ key }) => [key, { reason: 'agreed' }]),
    );
    expect(planOf({ ...job, settled }).released).toBe(true);
    expect(planOf({ ...job, settled, wire: { diameter: 0.3 } }).released).toBe(false);
  });

  it('a stop cannot be settled', () => {
    const job = jobOn([square(20), circle(0.1, 10, 10)], {});
    const settled = Object.fromEntries(planOf(job).findings.map(({ key }) => [key, { reason: 'no' }]));
    expect(planOf({ ...job, settled }).released).toBe(false);
  });

  it('a use that the user switched, and a contour left out', () => {
    const region = [square(20), circle(3, 10, 10)];
    const switched = planOf(jobOn(region, { uses: { c1: 'pierce', c2: 'leave out' } }));
    expect(switched.pairs.map(({ use }) => use)).toEqual(['pierce']);
  });

  it('every sample: nothing gouges, and every remainder has its finding', () => {
    for (const name of [
      'rain-gauge-contact-spring',
      'letterbox-hinge-leaf',
      'bicycle-bell-striker-plate',
      'heat-sink-spacer-inch',
    ]) {
      const bytes = new Uint8Array(readFileSync(new URL(`../../samples/${name}.dxf`, import.meta.url)));
      const plan = planOf(jobOnDrawing(`${name}.dxf`, bytes));
      expect(
        plan.findings.filter(({ code }) => code.startsWith('proof')),
        name,
      ).toEqual([]);
      expect(
        plan.pairs.every(({ die, punch }) => die.proof.passed && punch.proof.passed),
        name,
      ).toBe(true);
      const keys = new Set(plan.findings.map(({ key }) => key));
      expect(keys.size, `${name}: keys are unique`).toBe(plan.findings.length);
      for (const { die, punch } of plan.pairs) {
        for (const { findingKey } of [...die.remainders, ...punch.remainders])
          expect(keys.has(findingKey)).toBe(true);
      }
    }
  });

  it('shows the plan before its proofs, not released and with no verdict', () => {
    const early: Plan[] = [];
    const plan = createPipeline().plan(jobOn([square(20)], {}), (_step, _fraction, unproved) => {
      if (unproved) early.push(unproved);
    });
    expect(early.map(({ proved, released }) => [proved, released])).toEqual([[false, false]]);
    const members = early.flatMap(({ pairs }) => pairs.flatMap(({ die, punch }) => [die, punch]));
    expect(members.map(({ proof }) => proof.passed)).toEqual([false, false]);
    expect(plan.ok && plan.value.proved).toBe(true);
    expect(plan.ok && plan.value.pairs[0]?.die.cuts).toEqual(members[0]?.cuts);
  });

  it('the same job gives the same files, and an edit keeps the import', () => {
    const job = jobOn([square(20), circle(3, 10, 10)], {});
    const pipeline = createPipeline();
    const first = pipeline.plan(job);
    const again = pipeline.plan({ ...job, wire: { diameter: 0.2 } });
    expect(first.ok && again.ok && first.value.drawing === again.value.drawing).toBe(true);
    expect(pipeline.files(job)).toEqual(createPipeline().files(job));
  });
});

describe('job files', () => {
  it('read back what was written', () => {
    const job = jobOn(rounded, { name: 'Ö "quoted"' });
    const read = readJobFile(writeJobFile(job));
    expect(read.ok && read.value).toEqual(job);
  });

  it.each([
    ['cut off', '{"format":"diewright-job",', 'job-not-json'],
    ['something else', '{"format":"other","version":1}', 'job-not-ours'],
    ['from the future', '{"format":"diewright-job","version":99}', 'job-newer'],
    ['a missing field', '{"format":"diewright-job","version":1}', 'job-field'],
  ])('%s', (_, text, code) => {
    const read = readJobFile(text);
    expect(read.ok ? 'none' : read.problem.code).toBe(code);
  });
});
