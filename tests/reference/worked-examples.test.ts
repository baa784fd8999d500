import { describe, expect, it } from 'vitest';
import { createPipeline } from '../../core/pipeline';
import type { Job } from '../../core/job';
import type { Plan } from '../../core/plan';
import { jobOn } from '../support/dxf-of';
import { regionArea, regionLength } from '../support/contour-facts';
import { circle, roundedRectangle } from '../support/shapes';
import { jobPass } from '../support/job-pass';

function planOf(job: Job): Plan {
  const plan = createPipeline().plan(job);
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value;
}

const onePass: Job['passes'] = [jobPass({ sparkGap: 0.025 })];

describe('worked examples, end to end from a drawing', () => {
  // Groover, Fundamentals of Modern Manufacturing, example 20.1: Ø150 disk, 3.2 mm half-hard cold-rolled steel.
  it('disk blanking: clearance 0.24, die 150.00, punch 149.52', () => {
    const job = jobOn([circle(75)], {
      stock: { material: 'cold-rolled-half-hard', thickness: 3.2 },
      passes: onePass,
    });
    const plan = planOf(job);
    expect(plan.clearance.perSide).toBeCloseTo(0.24, 12);
    const [pair] = plan.pairs;
    expect(regionLength(pair?.die.designed ?? [])).toBeCloseTo(Math.PI * 150, 9);
    expect(regionLength(pair?.punch.designed ?? [])).toBeCloseTo(Math.PI * 149.52, 9);
  });

  // Exact geometry: washer t 3.2, OD 65, ID 30, A 0.060 (Groover, table 20.1): c 0.192; the clearance is taken from the
  // punch when blanking and from the die when piercing (Groover, chapter 20).
  it('washer: blanking punch 64.616, piercing die 30.384', () => {
    const job = jobOn([circle(32.5), circle(15)], {
      stock: { material: 'cold-rolled-soft', thickness: 3.2 },
      passes: onePass,
    });
    const [blank, pierce] = planOf(job).pairs;
    expect([blank?.use, pierce?.use]).toEqual(['blank', 'pierce']);
    expect(regionLength(blank?.die.designed ?? [])).toBeCloseTo(Math.PI * 65, 9);
    expect(regionLength(blank?.punch.designed ?? [])).toBeCloseTo(Math.PI * 64.616, 9);
    expect(regionLength(pierce?.punch.designed ?? [])).toBeCloseTo(Math.PI * 30, 9);
    expect(regionLength(pierce?.die.designed ?? [])).toBeCloseTo(Math.PI * 30.384, 9);
  });

  // Exact geometry: blank 20 × 10 with r 0.5, c 0.075, wire 0.25, gap 0.025.
  it('rounded blank: members and paths to the last digit', () => {
    const job = jobOn([roundedRectangle(20, 10, 0.5)], {
      stock: { material: 'cold-rolled-half-hard', thickness: 1 },
      passes: onePass,
    });
    const plan = planOf(job);
    const [pair] = plan.pairs;
    expect(plan.reach.die).toBeCloseTo(0.15, 12);
    expect(plan.reach.punch).toBeCloseTo(0.15, 12);
    expect(plan.clearance.perSide).toBeCloseTo(0.075, 12);
    expect(regionLength(pair?.die.designed ?? [])).toBeCloseTo(59.141593, 6);
    expect(regionArea(pair?.die.designed ?? [])).toBeCloseTo(199.785398, 6);
    expect(regionLength(pair?.die.cuts[0]?.passes.map(({ loop }) => loop) ?? [])).toBeCloseTo(58.199115, 6);
    expect(regionLength(pair?.punch.cuts[0]?.passes.map(({ loop }) => loop) ?? [])).toBeCloseTo(59.612832, 6);
    expect(plan.findings.filter(({ weight }) => weight !== 'note')).toEqual([]);
    expect(plan.released).toBe(true);
  });

  it('the clearance of that blank is even all round', () => {
    const job = jobOn([roundedRectangle(20, 10, 0.5)], {
      clearance: { rule: 'typed', perSide: 0.075 },
      passes: onePass,
    });
    const fit = planOf(job).pairs[0]?.fit;
    expect(fit?.least).toBeCloseTo(0.075, 9);
    expect(fit?.greatest).toBeCloseTo(0.075, 9);
  });

  // Exact geometry: a sharp punch corner loses (√2 − 1)·R of diagonal room in a die fillet of radius R; rounded to R − c
  // the clearance is even again.
  it('a sharp punch corner in the die fillet, and the match that cures it', () => {
    const square = [
      { x: 0, y: 0, bulge: 0 },
      { x: 10, y: 0, bulge: 0 },
      { x: 10, y: 10, bulge: 0 },
      { x: 0, y: 10, bulge: 0 },
    ];
    const job = jobOn([square], { clearance: { rule: 'typed', perSide: 0.075 }, passes: onePass });
    const sharp = planOf(job).pairs[0]?.fit;
    expect(sharp?.least).toBeCloseTo(0.075 * Math.SQRT2 - 0.15 * (Math.SQRT2 - 1), 9);
    const matched = planOf({
      ...job,
      corners: { ...job.corners, punch: { ...job.corners.punch, outside: { rule: 'match' } } },
    }).pairs[0]?.fit;
    expect(matched?.least).toBeCloseTo(0.075, 9);
    expect(matched?.greatest).toBeCloseTo(0.075, 9);
  });
});
