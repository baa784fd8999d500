import { describe, expect, it } from 'vitest';
import { newSetup, type SetupSettings } from '../../../core/cut-settings';
import type { Contour } from '../../../core/geometry/contour';
import { createPipeline } from '../../../core/pipeline';
import type { Job } from '../../../core/job';
import type { Block, Plan } from '../../../core/plan';
import { blockWork } from '../../../core/wire/block-work';
import { jobOn } from '../../support/dxf-of';
import { circle, square } from '../../support/shapes';

function planOf(
  contours: readonly Contour[],
  setup: Partial<SetupSettings>,
  changes: Partial<Job> = {},
): Plan {
  const plan = createPipeline().plan(jobOn(contours, { setup: { ...newSetup, ...setup }, ...changes }));
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value;
}

const grouping = (plan: Plan): Record<string, readonly string[]> =>
  Object.fromEntries(plan.blocks.map(({ id, memberIds }) => [id, memberIds]));

/** A plate of 60 with four holes in it, and a square beside it. */
const plate = [
  square(60),
  circle(4, 15, 15),
  circle(4, 45, 15),
  circle(4, 45, 45),
  circle(4, 15, 45),
  square(10, 70, 0),
];

const blockOf = (plan: Plan, id: string): Block => {
  const block = plan.blocks.find((one) => one.id === id);
  if (!block) throw new Error(`no block ${id}`);
  return block;
};

const blockFindings = (plan: Plan) => plan.findings.filter(({ code }) => code === 'block');

describe('which members share a block', () => {
  it('together: dies beside one another; openings inside another one in the next block; a block for each punch', () => {
    const groups = grouping(planOf(plate, {}));
    expect(groups['die']).toEqual(['blank-c1-die', 'blank-c6-die']);
    expect(groups['die-2']).toHaveLength(4);
    expect(Object.keys(groups)).toHaveLength(2 + 6);
  });

  it('one block: everything, with a finding while the outer slug is dropped', () => {
    const plan = planOf(plate, { dies: 'one block' });
    expect(grouping(plan)['die']).toHaveLength(6);
    expect(blockFindings(plan).map(({ title }) => title)).toEqual(
      Array.from({ length: 4 }, () => 'An opening in the slug of another one'),
    );
    const kept = planOf(
      plate,
      { dies: 'one block' },
      { cuts: { 'blank-c1-die-1': { ...choice, slug: 'kept' } } },
    );
    expect(blockFindings(kept)).toEqual([]);
  });

  it('apart: a block for each', () => {
    expect(planOf(plate, { dies: 'apart' }).blocks).toHaveLength(12);
  });

  it('punches together stay clear of one another, and say so where they are too close', () => {
    const apart = planOf([square(20), square(20, 40, 0)], { punches: 'together' });
    expect(grouping(apart)['punch']).toHaveLength(2);
    expect(blockFindings(apart)).toEqual([]);
    const close = planOf([square(20), square(20, 20.2, 0)], { punches: 'together' });
    expect(blockFindings(close)).toMatchObject([
      { weight: 'stop', title: 'Two punches too close for one block' },
    ]);
  });
});

const choice = { tabs: null, slug: null, fromEdge: false, stretches: [] };

describe('the outline of a block', () => {
  it('leaves the frame round holes and paths, and the clamps their strips', () => {
    const clamps = { left: 8, right: 0, bottom: 0, top: 3 };
    const plan = planOf([square(20)], { frame: 6, clamps });
    const { outline, clamps: strips } = blockOf(plan, 'blank-c1-punch');
    expect(strips).toEqual([
      { ...outline, maxX: outline.minX + 8 },
      { ...outline, minY: outline.maxY - 3 },
    ]);
    const inner = { minX: outline.minX + 8, maxX: outline.maxX, minY: outline.minY, maxY: outline.maxY - 3 };
    for (const { starts } of plan.pairs[0]?.punch.cuts ?? []) {
      for (const start of starts) {
        const { x, y, diameter } = start ?? { x: NaN, y: NaN, diameter: NaN };
        const room = Math.min(x - inner.minX, inner.maxX - x, y - inner.minY, inner.maxY - y) - diameter / 2;
        expect(room).toBeGreaterThanOrEqual(6);
      }
    }
    expect(blockFindings(plan)).toEqual([]);
  });

  it('around a die keeps 1.25 heights of steel (common practice)', () => {
    const { outline } = blockOf(planOf([square(20)], {}, { blocks: { die: 20, punch: 50 } }), 'die');
    expect(outline).toEqual({ minX: -25, minY: -25, maxX: 45, maxY: 45 });
  });

  it('that someone typed is taken, and what does not fit in it is said', () => {
    const outlines = { 'blank-c1-punch': { minX: -10, minY: -3, maxX: 30, maxY: 30 } };
    const thin = planOf([square(20)], { outlines });
    expect(blockFindings(thin)).toMatchObject([
      { weight: 'decide', title: 'Little steel left at the edge of the block' },
    ]);
    const cut = planOf([square(20)], {
      outlines: { 'blank-c1-punch': { minX: -10, minY: 1, maxX: 30, maxY: 30 } },
    });
    expect(blockFindings(cut)).toMatchObject([{ weight: 'stop', title: 'Cut beyond the edge of the block' }]);
  });

  it('a clamp that the wire runs into stops the job', () => {
    const clamps = { left: 12, right: 0, bottom: 0, top: 0 };
    const outlines = { die: { minX: -10, minY: -30, maxX: 50, maxY: 50 } };
    expect(blockFindings(planOf([square(20)], { clamps, outlines, frame: 0 }))).toMatchObject([
      { weight: 'stop', title: 'The wire runs into a clamp zone' },
    ]);
  });
});

describe('the order of work in a block', () => {
  it('what lies inside comes first', () => {
    for (const sequence of ['part by part', 'roughing first'] as const) {
      const plan = planOf(plate, { dies: 'one block', sequence });
      const order = blockOf(plan, 'die').order.map(({ memberId }) => memberId);
      const outer = order.indexOf('blank-c1-die');
      for (const inner of ['pierce-c2-die', 'pierce-c3-die', 'pierce-c4-die', 'pierce-c5-die']) {
        expect(order.indexOf(inner)).toBeLessThan(outer);
      }
    }
  });

  it('part by part: the threadings of a cut follow one another; the way round four holes is three sides long', () => {
    const block = blockOf(planOf(plate, {}), 'die-2');
    const members = block.order.map(({ memberId }) => memberId);
    expect(members.filter((id, k) => id !== members[k - 1])).toHaveLength(4);
    expect(block.travel).toBeCloseTo(90, 6);
  });

  it('roughing first: everything unattended, then everything attended, then the skims', () => {
    const plan = planOf(plate, { sequence: 'roughing first' });
    const work = blockWork(plan, blockOf(plan, 'die-2'));
    const kinds = work.map(({ threading, runs }) =>
      threading.attended ? 'tab' : runs[0]?.pass.pass === 0 ? 'rough' : 'skim',
    );
    expect(kinds).toEqual([...Array(4).fill('rough'), ...Array(4).fill('tab'), ...Array(4).fill('skim')]);
  });

  it('every threading of every cut stands in it once', () => {
    for (const sequence of ['part by part', 'roughing first'] as const) {
      const plan = planOf(plate, { sequence, dies: 'one block', punches: 'apart' });
      const named = plan.blocks.flatMap(({ order }) => order.map((one) => JSON.stringify(one)));
      const all = plan.pairs
        .flatMap(({ die, punch }) => [die, punch])
        .flatMap(({ id, cuts }) =>
          cuts.flatMap((cut, index) =>
            cut.threadings.map((_, threading) => JSON.stringify({ memberId: id, cut: index, threading })),
          ),
        );
      expect([...named].sort()).toEqual([...all].sort());
    }
  });
});

describe('a start from the edge of the block', () => {
  it('is a decision, because the block springs', () => {
    const plan = planOf([square(20)], {}, { cuts: { 'blank-c1-punch-1': { ...choice, fromEdge: true } } });
    expect(plan.findings.filter(({ code }) => code === 'edge-start')).toMatchObject([{ weight: 'decide' }]);
    expect(plan.released).toBe(false);
  });
});
