import { describe, expect, it } from 'vitest';
import { newDieSet } from '../../../core/die-set-settings';
import type { Contour } from '../../../core/geometry/contour';
import type { Job } from '../../../core/job';
import { createPipeline } from '../../../core/pipeline';
import type { Plan } from '../../../core/plan';
import { regionArea } from '../../support/contour-facts';
import { jobOn } from '../../support/dxf-of';
import { circle, polygon, roundedRectangle } from '../../support/shapes';

const pipeline = createPipeline();

function made(
  region: readonly Contour[],
  changes: Partial<Job> = {},
): { plan: Plan; text: string; job: Job } {
  const job = jobOn(region, {
    dieSet: { ...newDieSet, oneBlock: true },
    clearance: { rule: 'typed', perSide: 0.025 },
    blocks: { die: 20, punch: 50 },
    ...changes,
  });
  // One pass: 0.25 mm wire and 0.025 mm gap give a kerf of 0.3 mm.
  const [rough] = job.passes;
  if (!rough) throw new Error('no pass');
  const passes = [{ ...rough, sparkGap: 0.025, stockLeft: 0 }];
  const own: Job = { ...job, passRule: 'typed', passes };
  const plan = pipeline.plan(own);
  if (!plan.ok) throw new Error(plan.problem.what);
  const files = pipeline.files(own);
  const program = files.ok ? files.value.find(({ name }) => /-die\.(DRAFT\.)?nc$/.test(name)) : null;
  return { plan: plan.value, text: typeof program?.text === 'string' ? program.text : '', job: own };
}

const numbers = (text: string, letter: string): number[] =>
  [...text.replace(/\(.*\)/g, '').matchAll(new RegExp(`${letter}(-?[\\d.]+)`, 'g'))].map(([, n]) =>
    Number(n),
  );

// Exact geometry: K 0.300, h 20, c 0.025: tilt 0.78785°; the upper end leads by h·tan θ = 0.27503 mm.
const drift = 20 * Math.tan((0.787_85 * Math.PI) / 180);

describe('punch and die out of one block', () => {
  it('a disk: the program leans the wire by the drift all round, and the text is proved', () => {
    const { plan, text } = made([circle(10)]);
    expect(plan.blocks.map(({ id }) => id)).toEqual(['die']);
    const [u, v] = [numbers(text, 'U'), numbers(text, 'V')];
    expect(u.length).toBeGreaterThan(3);
    u.forEach((value, k) => expect(Math.hypot(value, v[k] ?? 0)).toBeCloseTo(drift, 4));
    // It begins on the path itself with the wire leaning, and the punch is held by a tab until the stop.
    expect(text).toMatch(/G00 X\S+ Y\S+ U\S+ V\S+/);
    expect(text.match(/M00/g)?.length).toBeGreaterThanOrEqual(1);
    expect(text.toLowerCase()).toContain('from one block by one cut');
    const [pair] = plan.pairs;
    expect(pair?.die.proof.passed).toBe(true);
    expect(pair?.punch.proof.passed).toBe(true);
    // Radius of the wire's centre at the die's edge: 10 − K / (2 cos θ); the punch's edge at the other face.
    expect(Math.sqrt(regionArea(pair?.punch.asCut ?? []) / Math.PI)).toBeCloseTo(10 - 0.025, 6);
    expect(pair?.fit?.least).toBeCloseTo(0.025, 6);
    expect(pair?.fit?.greatest).toBeCloseTo(0.025, 6);
    expect(plan.findings.filter(({ weight }) => weight === 'stop')).toEqual([]);
  });

  it.each<[string, Contour[]]>([
    ['a rounded blank', [roundedRectangle(20, 10, 1)]],
    ['a sharp blank', [polygon([0, 0], [20, 0], [20, 10], [0, 10])]],
    ['a washer', [circle(12), circle(4)]],
  ])('%s: every program is proved and the edges are the clearance apart', (_, region) => {
    const { plan } = made(region);
    expect(plan.pairs).toHaveLength(region.length);
    for (const pair of plan.pairs) {
      expect(pair.die.proof.passed).toBe(true);
      expect(pair.fit?.least).toBeCloseTo(0.025, 6);
      expect(pair.fit?.greatest).toBeCloseTo(0.025, 6);
    }
    expect(plan.findings.filter(({ weight }) => weight === 'stop')).toEqual([]);
  });

  it('a pierced hole keeps its size on the punch', () => {
    const { plan } = made([circle(30), circle(6)]);
    const hole = plan.pairs.find(({ use }) => use === 'pierce');
    expect(Math.sqrt(regionArea(hole?.punch.asCut ?? []) / Math.PI)).toBeCloseTo(6, 6);
    expect(Math.sqrt(regionArea(hole?.die.designed ?? []) / Math.PI)).toBeCloseTo(6.025, 6);
  });

  it('a block that does not allow it has no program, and a stop says why', () => {
    const { plan } = made([circle(10)], { clearance: { rule: 'typed', perSide: 0.4 } });
    expect(plan.pairs[0]?.die.cuts).toEqual([]);
    expect(plan.findings.find(({ code }) => code === 'one-block-impossible')?.weight).toBe('stop');
  });
});
