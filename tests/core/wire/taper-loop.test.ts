import { describe, expect, it } from 'vitest';
import { exitEnlargement } from '../../../core/die/regrinds';
import type { Contour } from '../../../core/geometry/contour';
import { arcOf } from '../../../core/geometry/contour-measures';
import { offsetRegion } from '../../../core/geometry/offset-region';
import { radians } from '../../../core/units';
import { contourAt, pairsAlong, reversedPairs } from '../../../core/wire/taper-chain';
import { chordedPairs, leanOf } from '../../../core/wire/taper-chords';
import { taperedLoop, type TaperCorners, type TaperLoop } from '../../../core/wire/taper-loop';
import { regionArea, variants } from '../../support/contour-facts';
import { angleShape, circle, corner, polygon, roundedRectangle, square } from '../../support/shapes';

/** Exit enlargement of h 25, land 3, 0.5°: 0.19199 mm (exact geometry). */
const growth = exitEnlargement(25, { land: 3, relief: radians(0.5) });

function loopOf(lower: Contour, corners: TaperCorners, by = growth): TaperLoop {
  const made = taperedLoop(lower, by, corners);
  if (!made.ok) throw new Error(`no taper at ${made.at.x}, ${made.at.y}`);
  return made.loop;
}

const leanAt = (loop: TaperLoop, x: number, y: number): number[] =>
  loop
    .filter(({ lower }) => Math.hypot(lower.x - x, lower.y - y) < 1e-9)
    .map((pair) => Math.hypot(leanOf(pair).x, leanOf(pair).y));

describe('the upper path of a taper', () => {
  it('conical: the parallel of the lower one, as the geometry room offsets it', () => {
    for (const shape of [square(8), angleShape(10, 4), roundedRectangle(10, 6, 0.5), circle(4)]) {
      for (const lower of variants(shape)) {
        const upper = contourAt(loopOf(lower, 'conical'), 1);
        expect(regionArea([upper])).toBeCloseTo(regionArea(offsetRegion([lower], growth)), 9);
      }
    }
  });

  it('conical: the wire leans by the angle everywhere, and turns about sharp inside corners', () => {
    const loop = loopOf(square(8), 'conical');
    expect(loop).toHaveLength(8);
    for (const pair of loop) expect(Math.hypot(leanOf(pair).x, leanOf(pair).y)).toBeCloseTo(growth, 12);
    // Four stretches without length below, quarter arcs of the growth above.
    const cones = loop.filter(({ lower }, i) => {
      const next = loop[(i + 1) % loop.length]?.lower;
      return lower.x === next?.x && lower.y === next.y;
    });
    expect(cones.map(({ upper }) => upper.bulge)).toEqual(
      Array(4).fill(expect.closeTo(Math.tan(Math.PI / 8), 12)),
    );
  });

  it('conical: radii grow at inside corners and shrink at outside ones', () => {
    const rounded = loopOf(roundedRectangle(10, 6, 0.5), 'conical');
    for (const radius of radiiAbove(rounded)) expect(radius).toBeCloseTo(0.5 + growth, 9);
    const outside = [
      ...polygon([0, 0], [10, 0], [10, 4]),
      corner(5, 4, -Math.tan(Math.PI / 8)),
      corner(4, 5),
      corner(4, 10),
      corner(0, 10),
    ];
    expect(Math.min(...radiiAbove(loopOf(outside, 'conical', 0.1)).filter((r) => r > 0.5))).toBeCloseTo(
      0.9,
      9,
    );
  });

  // Exact geometry: both faces are followed at once, so that the wire leans by tan b = tan a / cos(turn / 2).
  it('constant radius: corners move whole, by growth / cos(turn / 2)', () => {
    expect(leanAt(loopOf(square(8), 'constant radius'), 8, 8)).toEqual([
      expect.closeTo(growth * Math.SQRT2, 12),
    ]);
    const rounded = loopOf(roundedRectangle(10, 6, 0.5), 'constant radius');
    expect(rounded).toHaveLength(8);
    for (const radius of radiiAbove(rounded)) expect(radius).toBeCloseTo(0.5, 9);
    for (const pair of rounded)
      expect(Math.hypot(leanOf(pair).x, leanOf(pair).y)).toBeCloseTo(growth * Math.SQRT2, 9);
    const wedge = polygon([0, 0], [9, 0], [9, 9 * Math.tan(radians(40))]);
    expect(leanAt(loopOf(wedge, 'constant radius'), 0, 0)).toEqual([
      expect.closeTo(growth / Math.sin(radians(20)), 9),
    ]);
  });

  it('a circle has no corners: it is conical either way', () => {
    expect(loopOf(circle(4), 'constant radius')).toEqual(loopOf(circle(4), 'conical'));
  });

  it('an outside corner whose radius the taper uses up moves whole in either case', () => {
    // The wire's path about a sharp corner of the die: radius 0.15, less than the growth.
    const path = offsetRegion([angleShape(10, 4)], -0.15)[0] ?? [];
    for (const corners of ['conical', 'constant radius'] as const) {
      const loop = loopOf(path, corners);
      const [lean] = loop.filter(({ lower }) => lower.bulge !== 0).map(leanOf);
      expect(lean?.x).toBeCloseTo(growth, 9);
      expect(lean?.y).toBeCloseTo(growth, 9);
    }
  });

  it('says where an edge is too short for it', () => {
    // A tooth of the die 0.3 wide, tapered by 0.19 from both sides.
    const tooth = polygon([0, 0], [10, 0], [10, 6], [5.3, 6], [5.3, 4], [5, 4], [5, 6], [0, 6]);
    const made = taperedLoop(tooth, growth, 'conical');
    expect(made.ok).toBe(false);
    expect(!made.ok && Math.abs(made.at.y - 4)).toBeLessThan(1e-9);
  });
});

describe('runs along a taper', () => {
  const loop = loopOf(roundedRectangle(10, 6, 0.5), 'conical');

  it('begin and end within a stretch, both ends at the same share of it', () => {
    const chain = pairsAlong(loop, { segment: 0, along: 0.25 }, 4.5);
    expect(chain[0]?.lower).toMatchObject({ x: 0.5 + 0.25 * 9, y: 0 });
    expect(chain.at(-1)?.lower.x).toBeCloseTo(0.5 + 0.75 * 9, 9);
    for (const pair of [chain[0], chain.at(-1)])
      expect(pair && leanOf(pair)).toMatchObject({
        x: expect.closeTo(0, 12),
        y: expect.closeTo(-growth, 12),
      });
  });

  it('go round more than once, and back', () => {
    const whole = 2 * 9 + 2 * 5 + Math.PI;
    const chain = pairsAlong(loop, { segment: 0, along: 0.5 }, whole + 2);
    expect(chain.length).toBe(10);
    const back = reversedPairs(chain);
    expect(back.at(-1)?.lower).toMatchObject({ x: chain[0]?.lower.x, y: chain[0]?.lower.y });
    expect(reversedPairs(back)).toEqual(
      chain.map((pair) => ({ lower: { ...pair.lower }, upper: { ...pair.upper } })),
    );
  });

  it('keep arcs that a control can be trusted with', () => {
    const closed = (taper: TaperLoop) => [...taper, ...taper.slice(0, 1)];
    const arcsOf = (taper: TaperLoop, circular: boolean) =>
      chordedPairs(closed(taper), { tolerance: 0.001, circular }).filter(({ upper }) => upper.bulge !== 0)
        .length;
    expect(arcsOf(loop, false)).toBe(0);
    expect(arcsOf(loop, true)).toBe(4);
    // Moved whole: U and V stand still.
    expect(arcsOf(loopOf(roundedRectangle(10, 6, 0.5), 'constant radius'), false)).toBe(4);
  });
});

function radiiAbove(loop: TaperLoop): number[] {
  return loop.flatMap(({ upper }, i) => {
    const next = loop[(i + 1) % loop.length];
    return upper.bulge === 0 || !next ? [] : [arcOf(upper, next.upper).radius];
  });
}
