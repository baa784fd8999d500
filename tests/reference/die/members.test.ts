import { describe, expect, it } from 'vitest';
import { newDieSet, type DieSetSettings } from '../../../core/die-set-settings';
import type { Contour } from '../../../core/geometry/contour';
import { contourBox } from '../../../core/geometry/contour-measures';
import type { Job } from '../../../core/job';
import { createPipeline } from '../../../core/pipeline';
import type { Plan } from '../../../core/plan';
import { membersOf } from '../../../core/wire/members-of';
import { regionArea } from '../../support/contour-facts';
import { jobOn } from '../../support/dxf-of';
import { circle, polygon, roundedRectangle } from '../../support/shapes';

const pipeline = createPipeline();

function jobWith(
  region: readonly Contour[],
  dieSet: Partial<DieSetSettings>,
  changes: Partial<Job> = {},
): Job {
  return jobOn(region, { dieSet: { ...newDieSet, ...dieSet }, ...changes });
}

function planOf(job: Job): Plan {
  const plan = pipeline.plan(job);
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value;
}

const stripper = (change: Partial<DieSetSettings['stripper']> = {}) => ({
  stripper: { ...newDieSet.stripper, make: true, ...change },
});
const retainer = (change: Partial<DieSetSettings['retainer']> = {}) => ({
  retainer: { ...newDieSet.retainer, make: true, ...change },
});
const square = polygon([0, 0], [20, 0], [20, 20], [0, 20]);

describe('stripper and retainer', () => {
  // Exact geometry: a round punch of 20 less twice the clearance, an opening larger by twice the gap.
  it('openings are the punch and the gap all round', () => {
    const plan = planOf(
      jobWith([circle(10)], {
        ...stripper({ fit: { rule: 'allowance', perSide: 0.02 } }),
        ...retainer({ fit: { rule: 'allowance', perSide: -0.005 } }),
      }),
    );
    const [pair] = plan.pairs;
    const punch = 10 - plan.clearance.perSide;
    const [ofStripper, ofRetainer] = pair?.plates ?? [];
    expect(regionArea(ofStripper?.member.designed ?? [])).toBeCloseTo(Math.PI * (punch + 0.02) ** 2, 9);
    expect(regionArea(ofRetainer?.member.designed ?? [])).toBeCloseTo(Math.PI * (punch - 0.005) ** 2, 9);
    expect(ofStripper?.fit?.least).toBeCloseTo(0.02, 9);
    // Where it presses, punch and opening overlap by the allowance.
    expect(ofRetainer?.fit?.least).toBeCloseTo(-0.005, 9);
    expect(plan.findings.filter(({ code }) => code.startsWith('plate'))).toEqual([]);
  });

  // ISO 286-1 at 20 mm: H7 0/+21 µm, f7 −20/−41 µm; in the middle of both 10.5 + 30.5 = 41 µm in diameter.
  it('a running fit by ISO classes is made to the middle of both', () => {
    const fit = { rule: 'iso', hole: 'H7', shaft: 'f7', nominal: 20 } as const;
    const [pair] = planOf(jobWith([circle(10)], stripper({ fit }))).pairs;
    expect(pair?.plates[0]?.gap).toBeCloseTo(0.0205, 9);
    expect(pair?.plates[0]?.reason).toContain('ISO 286-1');
    // Without a typed nominal size it is the punch's own: 19.88 mm, the same step of the table.
    const [own] = planOf(jobWith([circle(10)], stripper({ fit: { ...fit, nominal: null } }))).pairs;
    expect(own?.plates[0]?.gap).toBeCloseTo(0.0205, 9);
    expect(own?.plates[0]?.reason).toContain('at 19.88 mm');
  });

  // Exact geometry: walls at the gap g, the wire's fillet of radius R between them; the punch's corner lies √2·(R − g)
  // from the fillet's centre, so R − √2·(R − g) from the fillet.
  it('a sharp punch binds in the fillets that the wire leaves, unless they are relieved', () => {
    const plan = planOf(jobWith([square], stripper({ corners: 'as the punch' })));
    const opening = plan.pairs[0]?.plates[0];
    const { stripper: reach } = plan.reach;
    expect(opening?.fit?.least).toBeCloseTo(reach - Math.SQRT2 * (reach - 0.01), 9);
    expect(plan.findings.find(({ code }) => code === 'plate-binds')).toMatchObject({ weight: 'stop' });

    const relieved = planOf(jobWith([square], stripper({ corners: 'relieved' })));
    const eased = relieved.pairs[0]?.plates[0];
    expect(eased?.member.remainders).toEqual([]);
    expect(eased?.fit?.least).toBeCloseTo(0.01, 9);
    // Four pockets about the corners of a rounded opening: each adds most of three quarters of its disc.
    const offsets = eased?.member.cuts[0]?.passes.map(({ offset }) => offset) ?? [];
    expect(offsets).toHaveLength(3);
    const pocket = (1.02 * Math.max(...offsets)) / Math.sin(Math.PI / 4);
    const flat = regionArea(opening?.member.designed ?? []);
    const added = regionArea(eased?.member.designed ?? []) - flat;
    expect(added).toBeGreaterThan(4 * 0.7 * Math.PI * pocket ** 2);
    expect(added).toBeLessThan(4 * 0.76 * Math.PI * pocket ** 2);
    // Every pass gets in: nothing of the plate stops the job.
    expect(
      relieved.findings.filter(({ weight, memberId }) => weight === 'stop' && memberId === eased?.member.id),
    ).toEqual([]);
  });

  it.each([30, 45, 60, 120])('pockets let the wire into a corner of %i°', (degrees) => {
    const turn = (degrees * Math.PI) / 180;
    const triangle = polygon([0, 0], [20, 0], [20 * Math.cos(turn), 20 * Math.sin(turn)]);
    const plan = planOf(jobWith([triangle], stripper()));
    expect(plan.pairs[0]?.plates[0]?.fit?.least).toBeCloseTo(0.01, 6);
    expect(plan.pairs[0]?.plates[0]?.member.remainders).toEqual([]);
  });

  it('a press fit in the stripper and a fit that no table has are found', () => {
    const press = planOf(jobWith([circle(10)], stripper({ fit: { rule: 'allowance', perSide: -0.01 } })));
    expect(press.findings.find(({ code }) => code === 'plate-fit')?.weight).toBe('decide');
    const fit = { rule: 'iso', hole: 'Q9', shaft: 'g6', nominal: 20 } as const;
    const unknown = planOf(jobWith([circle(10)], stripper({ fit })));
    expect(unknown.findings.find(({ code }) => code === 'plate-fit-unknown')?.weight).toBe('stop');
  });

  it('have blocks, passes and proved programs of their own', () => {
    const job = jobWith([circle(30), circle(5)], {
      ...stripper({ height: 16 }),
      ...retainer({ height: 80 }),
    });
    const plan = planOf(job);
    // An opening inside another one's slug is cut in the plate of the other tool.
    expect(plan.blocks.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['stripper', 'stripper-2', 'retainer', 'retainer-2']),
    );
    const own = membersOf(plan).filter(({ part }) => part === 'stripper' || part === 'retainer');
    expect(own).toHaveLength(4);
    for (const { proof } of own) expect(proof.passed).toBe(true);
    const files = pipeline.files(job);
    const names = files.ok ? files.value.map(({ name }) => name) : [];
    expect(names.filter((name) => /-(stripper|retainer)(-2)?\.(DRAFT\.)?nc$/.test(name))).toHaveLength(4);
    // The feed is the rate over the plate's own height.
    const feed = (part: string) => own.find((member) => member.part === part)?.cuts[0]?.passes[0]?.feed ?? 0;
    expect(feed('stripper') / feed('retainer')).toBeCloseTo(80 / 16, 9);
  });
});

describe('plug and hole', () => {
  // ISO 286-1 at 30 mm: H7 0/+21, g6 −7/−20: hole +5.25 per side, plug −6.75 per side in the middle of the limits.
  it('both are made to the middle of their limits', () => {
    const plan = planOf(jobWith([circle(15)], {}, { uses: { c1: 'mate' } }));
    const [pair] = plan.pairs;
    expect(pair).toMatchObject({ use: 'mate', die: { id: 'mate-c1-hole' }, punch: { id: 'mate-c1-plug' } });
    const radius = (region: readonly Contour[]) => Math.sqrt(regionArea(region) / Math.PI);
    expect(radius(pair?.die.designed ?? [])).toBeCloseTo(15 + 0.005_25, 9);
    expect(radius(pair?.punch.designed ?? [])).toBeCloseTo(15 - 0.006_75, 9);
    expect(pair?.fit?.least).toBeCloseTo(0.012, 9);
    expect(membersOf(plan).every(({ proof }) => proof.passed)).toBe(true);
    // It is no tool: neither force nor die block.
    expect(plan.dieSet.tools).toEqual([]);
  });

  it('a press fit by a typed allowance overlaps by it, without a stop', () => {
    const plan = planOf(
      jobWith(
        [roundedRectangle(20, 10, 2)],
        { plugFits: { c1: { rule: 'allowance', perSide: -0.008 } } },
        { uses: { c1: 'mate' } },
      ),
    );
    expect(plan.pairs[0]?.fit?.least).toBeCloseTo(-0.008, 9);
    expect(plan.findings.filter(({ weight }) => weight === 'stop')).toEqual([]);
  });

  it('a sharp plug in a hole with fillets asks', () => {
    const plan = planOf(jobWith([square], {}, { uses: { c1: 'mate' } }));
    expect(plan.findings.find(({ code }) => code === 'corner-strikes')?.title).toContain(
      'plug strikes the hole',
    );
  });
});

// Compound: the piercing die is an opening of the blanking punch, so both are cut from one piece in one program.
describe('blocks by arrangement', () => {
  const washer = [circle(32.5), circle(15)];

  it('compound: one program cuts the punch and the piercing die in it', () => {
    const plan = planOf(jobWith(washer, { arrangement: 'compound' }));
    const block = plan.blocks.find(({ memberIds }) => memberIds.includes('blank-c1-punch'));
    expect(block?.memberIds).toContain('pierce-c2-die');
    // Inner cuts first.
    expect(block?.order[0]?.memberId).toBe('pierce-c2-die');
    const die = plan.pairs.find(({ use }) => use === 'pierce')?.die;
    expect(die?.part).toBe('punch');
    expect(membersOf(plan).every(({ proof }) => proof.passed)).toBe(true);
    expect(plan.blocks.find(({ id }) => id === 'die')?.memberIds).toEqual(['blank-c1-die']);
  });

  it('two stations: both openings lie beside each other in one die block', () => {
    const plan = planOf(jobWith(washer, { arrangement: 'two stations' }));
    const die = plan.blocks.find(({ id }) => id === 'die');
    expect(die?.memberIds).toEqual(['blank-c1-die', 'pierce-c2-die']);
    const boxes = plan.pairs.map((pair) => contourBox(pair.die.designed[0] ?? []));
    const [a, b] = boxes;
    expect(a && b && (a.maxX < b.minX || b.maxX < a.minX || a.maxY < b.minY || b.maxY < a.minY)).toBe(true);
    expect(membersOf(plan).every(({ proof }) => proof.passed)).toBe(true);
  });
});
