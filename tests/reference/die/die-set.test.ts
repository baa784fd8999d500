import { describe, expect, it } from 'vitest';
import type { DieSetSettings } from '../../../core/die-set-settings';
import { newDieSet } from '../../../core/die-set-settings';
import type { Contour } from '../../../core/geometry/contour';
import { contourBox } from '../../../core/geometry/contour-measures';
import { createPipeline } from '../../../core/pipeline';
import type { Job } from '../../../core/job';
import type { Plan } from '../../../core/plan';
import { regionArea } from '../../support/contour-facts';
import { jobOn } from '../../support/dxf-of';
import { circle, polygon, roundedRectangle } from '../../support/shapes';

const pipeline = createPipeline();

function planOf(
  region: readonly Contour[],
  dieSet: Partial<DieSetSettings> = {},
  changes: Partial<Job> = {},
): Plan {
  const plan = pipeline.plan(jobOn(region, { dieSet: { ...newDieSet, ...dieSet }, ...changes }));
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value;
}

const codes = (plan: Plan) => plan.findings.map(({ code }) => code);

describe('force of whole jobs', () => {
  // Groover, Fundamentals of Modern Manufacturing, example 20.1: Ø150 disk, 3.2 mm, τ 310 MPa: 467,469 N.
  it('disk of the textbook', () => {
    const plan = planOf([circle(75)], {}, { stock: { material: 'cold-rolled-half-hard', thickness: 3.2 } });
    const [sheet] = plan.dieSet.tools;
    expect(Math.round(sheet?.cuts[0]?.byShear ?? 0)).toBe(467_469);
    expect(sheet?.force?.cutting).toBeCloseTo(467_469, 0);
    expect(sheet?.force?.centre?.x).toBeCloseTo(0, 9);
    // 30 % for dull edges and 20 % for the press: common practice.
    expect(sheet?.force?.needed).toBeCloseTo(467_469 * 1.3 * 1.2, -1);
  });

  // Kalpakjian & Schmid, eq. 16.1, form of example 16.1: a 25 mm hole in 3.2 mm, UTS 1000 MPa: 175,929 N.
  it('hole of the textbook, by tensile strength', () => {
    const material = {
      id: 'own-1',
      name: 'sheet of the example',
      family: null,
      clearance: 0.06,
      shearStrength: null,
      tensileStrength: 1000,
      source: 'example 16.1',
    };
    const plan = planOf(
      [circle(40), circle(12.5)],
      { force: { ...newDieSet.force, by: 'tensile strength' } },
      { stock: { material: 'own-1', thickness: 3.2 }, ownMaterials: [material] },
    );
    const hole = plan.dieSet.tools.flatMap(({ cuts }) => cuts).find(({ use }) => use === 'pierce');
    expect(Math.round(hole?.byTensile ?? 0)).toBe(175_929);
    expect(hole?.byShear).toBeNull();
    expect(Math.round(hole?.force ?? 0)).toBe(175_929);
  });

  // Exact geometry: blank 20 × 10, r 0.5, t 1, τ 310: 18,333.89 N.
  it('rounded blank', () => {
    const plan = planOf(
      [roundedRectangle(20, 10, 0.5)],
      {},
      { stock: { material: 'cold-rolled-half-hard', thickness: 1 } },
    );
    expect(plan.dieSet.tools[0]?.force?.cutting).toBeCloseTo(18_333.89, 2);
  });

  it('a stock without strength says so instead of a number', () => {
    const plan = planOf([circle(10)], {}, { stock: { material: 'stainless-half-hard', thickness: 1 } });
    expect(plan.dieSet.tools[0]?.force?.cutting).toBeGreaterThan(0);
    const unknown = planOf([circle(10)], {}, { stock: { material: 'steel-medium-rolled', thickness: 1 } });
    expect(unknown.dieSet.tools[0]?.force).toBeNull();
    expect(codes(unknown)).toContain('force-unknown');
  });

  it('a press below the stroke stops, one without margin asks', () => {
    const needed = planOf([circle(20)]).dieSet.tools[0]?.force?.needed ?? 0;
    const withRating = (rating: number) =>
      planOf([circle(20)], { force: { ...newDieSet.force, rating } }).findings.find(
        ({ code }) => code === 'press-too-small',
      )?.weight;
    expect(withRating(needed * 1.01)).toBeUndefined();
    expect(withRating(needed * 0.95)).toBe('decide');
    expect(withRating(needed * 0.5)).toBe('stop');
  });
});

// Groover, chapter 20: blanking takes the clearance from the punch, piercing from the die. Washer t 3.2, OD 65, ID 30,
// A 0.060: c 0.192; die 65, punch 64.616; piercing punch 30, die 30.384 (worked from the definitions).
describe('pieces with holes', () => {
  const washer = [circle(32.5), circle(15)];
  const stock = { stock: { material: 'cold-rolled-soft', thickness: 3.2 } };
  const area = (diameter: number) => (Math.PI * diameter ** 2) / 4;

  it('separate tools: one blanks, one pierces', () => {
    const { tools } = planOf(washer, {}, stock).dieSet;
    expect(tools.map(({ tool }) => tool.id)).toEqual(['blanking', 'piercing']);
    const regions = tools.flatMap(({ parts }) =>
      parts.map(({ name, region }) => [name, regionArea(region)] as const),
    );
    expect(Object.fromEntries(regions.map(([name, value]) => [name, Number(value.toFixed(4))]))).toEqual({
      'Blanking die': Number(area(65).toFixed(4)),
      'Blanking punch c1': Number(area(64.616).toFixed(4)),
      'Piercing die': Number(area(30.384).toFixed(4)),
      'Piercing punch c2': Number(area(30).toFixed(4)),
    });
  });

  it('compound: the blanking punch carries the piercing die', () => {
    const { tools } = planOf(washer, { arrangement: 'compound' }, stock).dieSet;
    expect(tools).toHaveLength(1);
    const punch = tools[0]?.parts.find(({ id }) => id === 'punch');
    expect(regionArea(punch?.region ?? [])).toBeCloseTo(area(64.616) - area(30.384), 6);
    expect(punch?.memberIds).toEqual(['blank-c1-punch', 'pierce-c2-die']);
    const die = tools[0]?.parts.find(({ id }) => id === 'die');
    expect(regionArea(die?.region ?? [])).toBeCloseTo(area(65), 6);
    // Wall of the punch between its outline and its piercing die.
    expect(tools[0]?.punches[0]?.narrowest?.width).toBeCloseTo((64.616 - 30.384) / 2, 6);
    // Force of both cuts in one stroke.
    expect(tools[0]?.force?.cutting).toBeCloseTo(Math.PI * 95 * 3.2 * 276, 3);
  });

  it('two stations: the hole is pierced one feed up the strip', () => {
    const plan = planOf(washer, { arrangement: 'two stations' }, stock);
    const strip = planOf(washer, { strip: { ...newDieSet.strip, up: 'one up' } }, stock).dieSet.strip;
    const feed = strip?.layout.feed ?? Number.NaN;
    // Blanks over 2½ in: 1¼ thicknesses of bridge.
    expect(feed).toBeCloseTo(65 + 1.25 * 3.2, 6);
    const pierce = plan.pairs.find(({ use }) => use === 'pierce');
    const box = contourBox(pierce?.punch.designed[0] ?? []);
    const away = Math.hypot((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);
    expect(away).toBeCloseTo(feed, 6);
    const [sheet] = plan.dieSet.tools;
    expect(sheet?.parts.find(({ id }) => id === 'die')?.region).toHaveLength(2);
    // The centre of pressure moves towards the shorter cut by its share of the lengths.
    const centre = sheet?.force?.centre;
    expect(Math.hypot(centre?.x ?? 0, centre?.y ?? 0)).toBeCloseTo((feed * 30) / 95, 6);
    // Wall between the openings: feed less both radii.
    expect(sheet?.block.wall).toBeNull();
  });

  it('stations farther apart leave idle ones between', () => {
    const plan = planOf(washer, { arrangement: 'two stations', stationsApart: 2 }, stock);
    const box = contourBox(plan.pairs.find(({ use }) => use === 'pierce')?.punch.designed[0] ?? []);
    expect(Math.hypot((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2)).toBeCloseTo(
      2 * (65 + 1.25 * 3.2),
      6,
    );
  });
});

// Common practice throughout.
describe('rules of tool and block', () => {
  const washer = [circle(32.5), circle(15)];

  it('a compound tool without a knockout asks, one with it does not', () => {
    const asks = (dieSet: Partial<DieSetSettings>) => codes(planOf(washer, dieSet)).includes('knockout-none');
    expect(asks({ arrangement: 'compound' })).toBe(true);
    expect(asks({ arrangement: 'compound', knockout: 'positive' })).toBe(false);
    expect(asks({})).toBe(false);
  });

  it('springs hold the stripping force when the tool is open, and more when it is closed', () => {
    const springs = { rate: 40, longestDeflection: 10, count: null };
    const [sheet] = planOf([circle(20)], { stripping: 'springs', springs, entry: 1 }).dieSet.tools;
    const set = sheet?.force?.springs;
    // Hooke's law: rate, number and preload give the force; 1 mm of stock and 1 mm of entry come on top.
    expect(40 * (set?.count ?? 0) * (set?.preload ?? 0)).toBeCloseTo(sheet?.force?.strippingTo ?? 0, 6);
    expect(set?.deflection).toBeCloseTo((set?.preload ?? 0) + 2, 9);
    expect(set?.closedForce).toBeCloseTo(40 * (set?.count ?? 0) * (set?.deflection ?? 0), 6);
    expect(set?.overrun).toBe(0);
    const few = planOf([circle(20)], { stripping: 'springs', springs: { ...springs, count: 1 } });
    expect(codes(few)).toContain('springs-overrun');
  });

  it('a block with 1.25 times its height beside the opening passes, a smaller one asks', () => {
    const outline = (margin: number) => ({
      setup: {
        ...jobOn([]).setup,
        outlines: { die: { minX: -10 - margin, minY: -60, maxX: 60, maxY: 60 } },
      },
      blocks: { die: 20, punch: 50 },
    });
    expect(codes(planOf([circle(10)], {}, outline(25)))).not.toContain('die-edge-thin');
    const plan = planOf([circle(10)], {}, outline(20));
    const found = plan.findings.find(({ code }) => code === 'die-edge-thin');
    expect(found?.numbers.map(({ value }) => value)).toEqual([20, 25]);
    expect(found?.message).toContain('common practice');
  });

  it('land and relief of the job count in the regrinds', () => {
    // 3 mm of land at 0.1 mm: 30 regrinds; 22 mm of relief at 0.5°: 0.19199 mm wider at the exit (worked from tan).
    const relief = {
      ...jobOn([]).relief,
      kind: 'land and relief',
      land: 3,
      angleDeg: 0.5,
      perGrind: 0.1,
    } as const;
    const [sheet] = planOf([circle(10)], {}, { relief, blocks: { die: 25, punch: 50 } }).dieSet.tools;
    expect(sheet?.block.exit).toBeCloseTo(0.191_99, 5);
    expect(sheet?.block.regrinds).toBe(
      Math.min(30, Math.floor((25 - (sheet?.block.thickness.least ?? 0)) / 0.1)),
    );
  });
});

// Common practice: hole ≥ 1.2 t, wall ≥ 2 t, blank width ≥ 1.5 t.
describe('rules of the piece', () => {
  const plate = (x: number, radius: number) => [
    polygon([0, 0], [40, 0], [40, 30], [0, 30]),
    circle(radius, x, 15),
  ];
  const stock = { stock: { material: 'brass', thickness: 2 } };
  const titles = (plan: Plan) =>
    plan.findings.filter(({ code }) => code === 'piece-narrow').map(({ title }) => title);

  it('a hole of 2.4 mm in 2 mm passes, one of 2.3 mm asks', () => {
    expect(titles(planOf(plate(20, 1.2), {}, stock))).toEqual([]);
    expect(titles(planOf(plate(20, 1.15), {}, stock))).toEqual(['A hole narrow for its stock']);
  });

  it('stainless steel wants twice the thickness', () => {
    const stainless = { stock: { material: 'stainless-soft', thickness: 2 } };
    expect(titles(planOf(plate(20, 1.9), {}, stainless))).toEqual(['A hole narrow for its stock']);
    expect(titles(planOf(plate(20, 2), {}, stainless))).toEqual([]);
  });

  it('a wall of 4 mm passes, one of 3.9 mm asks, at its place', () => {
    expect(titles(planOf(plate(7, 3), {}, stock))).toEqual([]);
    const plan = planOf(plate(6.9, 3), {}, stock);
    const [wall] = plan.findings.filter(({ code }) => code === 'piece-narrow');
    expect(wall?.title).toBe('Little stock between a hole and the edge');
    expect(wall?.numbers[0]?.value).toBeCloseTo(3.9, 9);
    expect(wall?.message).toContain('common practice');
    expect(wall?.place?.y).toBeCloseTo(15, 6);
  });

  it('a tongue of the blank narrower than 1.5 t asks', () => {
    const tongue = polygon([0, 0], [30, 0], [30, 10], [42, 10], [42, 12.9], [30, 12.9], [30, 20], [0, 20]);
    expect(titles(planOf([tongue], {}, stock))).toEqual(['A part of the blank narrow for its stock']);
  });
});

describe('one block, one cut', () => {
  const job = {
    stock: { material: 'brass', thickness: 1 },
    clearance: { rule: 'typed', perSide: 0.025 } as const,
  };

  // Exact geometry: the punch's edge, come down into the plane of the die's edge, is the clearance away all round.
  it.each<[string, Contour[]]>([
    ['a rounded blank', [roundedRectangle(20, 10, 1)]],
    ['a sharp one', [polygon([0, 0], [20, 0], [20, 10], [0, 10])]],
    ['a round one with a hole', [circle(12), circle(4)]],
  ])('%s keeps its clearance', (_, region) => {
    const plan = planOf(region, { oneBlock: true }, job);
    expect(plan.dieSet.oneBlocks).toHaveLength(region.length);
    for (const { least, greatest } of plan.dieSet.oneBlocks) {
      expect(least).toBeCloseTo(0.025, 6);
      expect(greatest).toBeCloseTo(0.025, 6);
    }
    expect(codes(plan)).not.toContain('one-block-uneven');
  });

  it('a re-entrant corner tighter than the lean is found, and so is a clearance wider than the cut', () => {
    const notch = polygon([0, 0], [20, 0], [20, 10], [12, 10], [12, 6], [8, 6], [8, 10], [0, 10]);
    expect(codes(planOf([notch], { oneBlock: true }, job))).toContain('one-block-reentrant');
    const wide = planOf([circle(10)], { oneBlock: true }, { clearance: { rule: 'typed', perSide: 0.4 } });
    expect(wide.findings.find(({ code }) => code === 'one-block-impossible')?.weight).toBe('stop');
  });
});

describe('sections', () => {
  it('a sharp-cornered die comes in four sections, each in a drawing of its own, with a grinding note', () => {
    const job = jobOn([polygon([0, 0], [20, 0], [20, 10], [0, 10])], {
      dieSet: { ...newDieSet, sections: { of: 'die', stock: 0.1 } },
    });
    const files = pipeline.files(job);
    const names = files.ok ? files.value.map(({ name }) => name) : [];
    expect(names.filter((name) => name.includes('-section-'))).toHaveLength(4);
    const note = files.ok ? files.value.find(({ name }) => name.endsWith('grinding-note.txt'))?.text : '';
    expect(note).toContain('blank-c1-die: 4 sections');
    expect(note).toMatch(/Pin of .* over the pin \d+\.\d{4} mm/);
    expect(note).toContain('1910.215');
  });
});
