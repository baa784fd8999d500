import { describe, expect, it } from 'vitest';
import { gaugeStack } from '../../../core/die/gauge-stack';
import { gaugePins, overPin } from '../../../core/die/over-pin';
import type { Section } from '../../../core/die/section';
import { splitDie } from '../../../core/die/split-die';
import { splitPlaces } from '../../../core/die/split-places';
import { splitPunch } from '../../../core/die/split-punch';
import type { Box, Contour } from '../../../core/geometry/contour';
import { contourArea } from '../../../core/geometry/contour-measures';
import { radians } from '../../../core/units';
import { regionArea, variants } from '../../support/contour-facts';
import { angleShape, circle, polygon, roundedRectangle, square, star } from '../../support/shapes';

const block: Box = { minX: -40, minY: -40, maxX: 60, maxY: 60 };
const blockArea = 100 * 100;

const die = (opening: Contour, others: readonly Contour[] = [], reach = 0.15) =>
  splitDie({ memberId: 'die', opening, others, block, reach, stock: 0.1 });

const total = (sections: readonly Section[]) =>
  sections.reduce((sum, { outline }) => sum + regionArea(outline), 0);

/** No inside corner of the steel is left but such as lie at a joint, where the section is open. */
function openCorners(section: Section): number {
  const [outer = []] = section.outline;
  return splitPlaces(outer, 'inside', 0.15).filter(
    ({ kind, at }) =>
      kind === 'corner' || !section.joints.some(({ from }) => Math.hypot(from.x - at.x, from.y - at.y) < 0.2),
  ).length;
}

/** Tangents from the origin to a circle of radius 6 about (12, 0). */
const drop: Contour = [
  { x: 0, y: 0, bulge: 0 },
  { x: 9, y: -Math.sqrt(27), bulge: Math.tan(Math.PI / 6) },
  { x: 18, y: 0, bulge: Math.tan(Math.PI / 6) },
  { x: 9, y: Math.sqrt(27), bulge: 0 },
];

// Exact geometry: the sections together are the block less its openings, and none keeps an inside corner.
describe('a die split through its tight corners', () => {
  it.each<[string, Contour, number]>([
    ['a rectangle', polygon([0, 0], [20, 0], [20, 10], [0, 10]), 4],
    ['an L', angleShape(18, 6), 5],
    ['a star of six', star(6, 15, 8), 6],
    ['a rectangle with fillets that no wire cuts', roundedRectangle(20, 10, 0.03), 4],
    ['a drop with one corner', drop, 2],
  ])('%s', (_, opening, count) => {
    for (const variant of variants(opening).slice(0, 6)) {
      const { sections, unreached } = die(variant);
      expect(unreached).toEqual([]);
      expect(sections).toHaveLength(count);
      expect(total(sections)).toBeCloseTo(blockArea - contourArea(variant), 6);
      for (const section of sections) {
        expect(openCorners(section)).toBe(0);
        expect(regionArea(section.outline)).toBeGreaterThan(0);
        expect(regionArea(section.rough)).toBeGreaterThan(regionArea(section.outline));
      }
    }
  });

  it('each section of a rectangle is ground straight through: its joint goes on from its edge', () => {
    const { sections } = die(polygon([0, 0], [20, 0], [20, 10], [0, 10]));
    const straight = sections.filter(({ joints, working }) =>
      joints.some(({ from, to }) =>
        working.some((chain) => {
          const [a, b] = [chain[0], chain.at(-1)];
          if (!a || !b) return false;
          const cross = (b.x - a.x) * (to.y - from.y) - (b.y - a.y) * (to.x - from.x);
          return Math.abs(cross) < 1e-9;
        }),
      ),
    );
    expect(straight).toHaveLength(4);
    expect(sections.map(({ wheelRadius }) => wheelRadius)).toEqual([null, null, null, null]);
  });

  it('a fillet sets the wheel radius of the sections on both sides', () => {
    const { sections } = die(roundedRectangle(20, 10, 0.03));
    for (const { wheelRadius } of sections) expect(wheelRadius).toBeCloseTo(0.03, 9);
  });

  it('other openings of the block become holes of their sections, and no joint runs through them', () => {
    const hole = circle(2, 30, 20);
    const blocking = square(4, 24, -2);
    const { sections } = die(polygon([0, 0], [20, 0], [20, 10], [0, 10]), [hole, blocking]);
    expect(total(sections)).toBeCloseTo(blockArea - 200 - contourArea(hole) - 16, 6);
    expect(sections.flatMap(({ outline }) => outline.slice(1))).toHaveLength(2);
  });

  it('no tight corner, no sections', () => {
    expect(die(roundedRectangle(20, 10, 1)).sections).toEqual([]);
    expect(die(circle(5)).sections).toEqual([]);
  });
});

describe('a punch split through its inside corners', () => {
  const punch = (contour: Contour) => splitPunch({ memberId: 'punch', contour, reach: 0.15, stock: 0.1 });
  const cross = polygon(
    [4, 0],
    [8, 0],
    [8, 4],
    [12, 4],
    [12, 8],
    [8, 8],
    [8, 12],
    [4, 12],
    [4, 8],
    [0, 8],
    [0, 4],
    [4, 4],
  );

  it.each<[string, Contour, number]>([
    ['an L into two', angleShape(18, 6), 2],
    ['a cross into three: two corners lie on one line', cross, 5],
    ['a convex one not at all', square(5), 0],
  ])('%s', (_, contour, most) => {
    for (const variant of variants(contour)) {
      const sections = punch(variant);
      expect(sections.length).toBeLessThanOrEqual(most);
      expect(sections.length).toBeGreaterThan(most === 0 ? -1 : 1);
      if (most > 0) expect(total(sections)).toBeCloseTo(contourArea(variant), 9);
      for (const section of sections) expect(openCorners(section)).toBe(0);
    }
  });

  it('a fillet that no wire cuts is opened once', () => {
    const [first, ...others] = angleShape(18, 6);
    // The inside corner at (6, 6) with a fillet of 0.05.
    const filleted = [first, ...others].flatMap((v) =>
      v && v.x === 6 && v.y === 6
        ? [
            { x: 6.05, y: 6, bulge: -Math.tan(Math.PI / 8) },
            { x: 6, y: 6.05, bulge: 0 },
          ]
        : v
          ? [v]
          : [],
    );
    const sections = punch(filleted);
    expect(sections).toHaveLength(2);
    expect(total(sections)).toBeCloseTo(contourArea(filleted), 9);
    for (const { wheelRadius } of sections) expect(wheelRadius).toBeCloseTo(0.05, 9);
  });
});

// Trigonometry of a pin between a plate and a face: touches both, or the blocks and the face.
describe('measuring over a pin on gauge blocks', () => {
  it.each([30, 45, 60, 75, 90, 105, 120, 150])('a face at %d°: the pin touches blocks and face', (degree) => {
    const setup = { toCorner: 40, nook: radians(degree), faceLength: 18 };
    const measured = overPin(setup);
    if (!measured) throw new Error('no pin');
    const { pin, stack, overPin: over, contact } = measured;
    expect(gaugePins).toContain(pin);
    // Centre of the pin, found from the measure; its distance to the face's line must be its radius.
    const centre = { x: over - pin / 2, y: stack + pin / 2 };
    const normal = { x: Math.sin(setup.nook), y: -Math.cos(setup.nook) };
    const distance = (centre.x - 40) * normal.x + centre.y * normal.y;
    expect(distance).toBeCloseTo(pin / 2, 12);
    const touch = { x: centre.x - (pin / 2) * normal.x, y: centre.y - (pin / 2) * normal.y };
    expect(Math.hypot(touch.x - 40, touch.y)).toBeCloseTo(contact, 12);
    expect(contact).toBeGreaterThan(0);
    expect(contact).toBeLessThanOrEqual(18);
  });

  // Shop handbooks: over a roller in the corner of a face at ψ: X + r·(1 + cot(ψ/2)).
  it('on the plate it is the handbooks’ roller formula', () => {
    const measured = overPin({ toCorner: 25, nook: radians(60), faceLength: 3 });
    expect(measured?.stack).toBe(0);
    const radius = (measured?.pin ?? 0) / 2;
    expect(measured?.overPin).toBeCloseTo(25 + radius * (1 + 1 / Math.tan(radians(30))), 12);
  });

  it('a face too short for any pin has no measure', () => {
    expect(overPin({ toCorner: 25, nook: radians(30), faceLength: 0.5 })).toBeNull();
  });
});

// Metric gauge block sets (ISO 3650 sizes): every stack sums to the height.
describe('gauge block stacks', () => {
  it('make every micron from 2 to 250 mm that is asked of them', () => {
    for (let k = 0; k < 4000; k++) {
      const height = Math.round((2.5 + k * 0.0613) * 1000) / 1000;
      const stack = gaugeStack(height);
      if (!stack) throw new Error(`no stack for ${height}`);
      expect(stack.reduce((sum, block) => sum + block, 0)).toBeCloseTo(height, 9);
      expect(new Set(stack).size).toBe(stack.length);
      expect(stack.length).toBeLessThanOrEqual(7);
    }
  });

  it('uses the blocks of the set only', () => {
    expect(gaugeStack(41.378)).toEqual([1.008, 1.37, 14, 25]);
    expect(gaugeStack(100)).toEqual([100]);
    expect(gaugeStack(0.3)).toBeNull();
    expect(gaugeStack(400)).toBeNull();
  });
});
