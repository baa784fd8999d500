import { describe, expect, it } from 'vitest';
import type { Contour, Region } from '../../../core/geometry/contour';
import { contourArea } from '../../../core/geometry/contour-measures';
import { offsetRegion, prepareRegion } from '../../../core/geometry/offset-region';
import { bruteDistance, pointsAlong, regionArea, regionLength, variants } from '../../support/contour-facts';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import {
  angleShape,
  circle,
  corner,
  polygon,
  quarter,
  roundedSlot,
  square,
  star,
} from '../../support/shapes';

/** Area and length to 1e-9 for every start, turn and mirror image of a contour. */
function expectOffset(source: Contour, distance: number, area: number, length: number, loops = 1): void {
  for (const contour of variants(source)) {
    const result = offsetRegion([contour], distance);
    expect(result).toHaveLength(loops);
    expect(Math.abs(regionArea(result) - area)).toBeLessThan(1e-9 * Math.max(1, area));
    expect(Math.abs(regionLength(result) - length)).toBeLessThan(1e-9 * Math.max(1, length));
  }
}

// Steiner's formula for a convex body: area A + L·d + π·d², length L + 2π·d outward; inward by similar triangles.
describe('offsetRegion, exact areas and lengths', () => {
  it('square', () => {
    expectOffset(square(10), 1, 100 + 40 + Math.PI, 40 + 2 * Math.PI);
    expectOffset(square(10), -1, 64, 32);
    expectOffset(square(10), -4.9999, 0.0002 ** 2, 4 * 0.0002);
  });

  it('circle', () => {
    expectOffset(circle(5), 1, 36 * Math.PI, 12 * Math.PI);
    expectOffset(circle(5), -4, Math.PI, 2 * Math.PI);
  });

  it('rounded slot', () => {
    expectOffset(roundedSlot(20, 3), 0.5, 20 * 7 + Math.PI * 3.5 ** 2, 40 + 7 * Math.PI);
    expectOffset(roundedSlot(20, 3), -0.5, 20 * 5 + Math.PI * 2.5 ** 2, 40 + 5 * Math.PI);
  });

  it('star: parallels inside, rolled points and shortened notches outside', () => {
    const points = 5;
    const [outer, inner, d] = [10, 4, 0.3];
    const source = star(points, outer, inner);
    const side = Math.hypot(outer - inner * Math.cos(Math.PI / points), inner * Math.sin(Math.PI / points));
    const area = points * outer * inner * Math.sin(Math.PI / points);
    const length = 2 * points * side;
    // The outline turns left by `tip` at each point and right by `notch` at each notch; all turns together make 2π.
    const tip = Math.PI - 2 * Math.asin((inner * Math.sin(Math.PI / points)) / side);
    const notch = tip - (2 * Math.PI) / points;
    // A corner that opens gains a sector, one that closes loses a kite with sides d·tan(turn / 2).
    const sector = (turn: number) => (turn * d * d) / 2;
    const kite = (turn: number) => d * d * Math.tan(turn / 2);
    expectOffset(
      source,
      d,
      area + length * d + points * (sector(tip) - kite(notch)),
      length + points * (tip * d - 2 * d * Math.tan(notch / 2)),
    );
    expectOffset(
      source,
      -d,
      area - length * d + points * (kite(tip) - sector(notch)),
      length + points * (notch * d - 2 * d * Math.tan(tip / 2)),
    );
  });

  it('L: one inside corner, five outside', () => {
    const [leg, width, d] = [10, 4, 1];
    const area = leg * leg - (leg - width) ** 2;
    const length = 4 * leg;
    expectOffset(
      angleShape(leg, width),
      d,
      area + length * d + (5 * Math.PI * d * d) / 4 - d * d,
      length + (5 * Math.PI * d) / 2 - 2 * d,
    );
    expectOffset(
      angleShape(leg, width),
      -d,
      area - length * d + 5 * d * d - (Math.PI * d * d) / 4,
      length - 10 * d + (Math.PI * d) / 2,
    );
  });
});

describe('offsetRegion, loops that vanish, split or arise', () => {
  const dumbbell = polygon(
    [0, 0],
    [10, 0],
    [10, 4],
    [20, 4],
    [20, 0],
    [30, 0],
    [30, 10],
    [20, 10],
    [20, 6],
    [10, 6],
    [10, 10],
    [0, 10],
  );

  it('vanishes when nothing is far enough from the edge', () => {
    expect(offsetRegion([square(10)], -5)).toEqual([]);
    expect(offsetRegion([square(10)], -5.001)).toEqual([]);
    expect(offsetRegion([circle(5)], -5)).toEqual([]);
  });

  it('splits at a neck, at the width of exactly twice the offset too', () => {
    expect(offsetRegion([dumbbell], -0.999)).toHaveLength(1);
    expect(offsetRegion([dumbbell], -1)).toHaveLength(2);
    expect(offsetRegion([dumbbell], -1.001)).toHaveLength(2);
  });

  it('closes a slot outward into a pocket', () => {
    const keyhole = polygon(
      [0, 0],
      [20, 0],
      [20, 20],
      [11, 20],
      [11, 15],
      [15, 15],
      [15, 5],
      [5, 5],
      [5, 15],
      [9, 15],
      [9, 20],
      [0, 20],
    );
    const grown = offsetRegion([keyhole], 1.2);
    expect(grown.map((loop) => Math.sign(contourArea(loop))).sort()).toEqual([-1, 1]);
    expect(grown.find((loop) => contourArea(loop) < 0)?.length).toBeGreaterThan(3);
  });

  it('keeps a hole in a region and grows it when the region shrinks', () => {
    const hole = [...square(2, 4, 4)].reverse();
    const shrunk = offsetRegion([square(10), hole], -1);
    expect(regionArea(shrunk)).toBeCloseTo(64 - (4 + 8 + Math.PI), 9);
  });

  it('leaves a region alone at distance 0', () => {
    const region: Region = [square(3)];
    expect(offsetRegion(region, 0)).toBe(region);
  });
});

describe('offsetRegion, shapes that are hard on the arithmetic', () => {
  it('arcs that meet tangent stay tangent and keep their number', () => {
    const result = offsetRegion([roundedSlot(20, 3)], 0.147);
    expect(result[0]).toHaveLength(4);
  });

  it('an inside arc of exactly the offset becomes a corner', () => {
    const contour = [
      corner(0, 0),
      corner(10, 0),
      corner(10, 4),
      corner(5, 4, -quarter),
      corner(4, 5),
      corner(4, 10),
      corner(0, 10),
    ];
    const [loop] = offsetRegion([contour], 1);
    // L of legs 10 grown by 1 with the notch's fillet gone: its corner is sharp at (5, 5).
    expect(loop?.some(({ x, y }) => Math.hypot(x - 5, y - 5) < 1e-9)).toBe(true);
  });

  it('segments of a micrometre', () => {
    const contour = polygon([0, 0], [5, 0], [5.001, 0.0005], [10, 0.0005], [10, 5], [0, 5]);
    const result = offsetRegion([contour], -0.15);
    expect(result).toHaveLength(1);
    for (const { x, y } of pointsAlong(result[0] as Contour, 4)) {
      expect(Math.abs(bruteDistance([contour], x, y) - 0.15)).toBeLessThan(1e-9);
    }
  });

  it('nearly tangent neighbours', () => {
    const contour = polygon([0, 0], [5, 1e-7], [10, 0], [10, 5], [5, 5 - 1e-7], [0, 5]);
    expect(regionArea(offsetRegion([contour], -0.5))).toBeCloseTo(36, 5);
    expect(regionArea(offsetRegion([contour], 0.5))).toBeCloseTo(50 + 15 + Math.PI / 4, 5);
  });

  it('a contour 10 m from the origin', () => {
    const contour = star(7, 5, 2).map((v) => ({ ...v, x: v.x + 10_000, y: v.y - 10_000 }));
    for (const d of [-0.4, 0.4]) {
      const away = offsetRegion([contour], d);
      const home = offsetRegion([star(7, 5, 2)], d);
      expect(away).toHaveLength(home.length);
      expect(Math.abs(regionArea(away) - regionArea(home))).toBeLessThan(1e-7);
    }
  });

  it('cusps: a teardrop of two tangent arcs', () => {
    // Two arcs of 60° and a half turn that meet in a cusp-like point.
    const contour = [corner(0, 0, 0.5), corner(4, 0, 0.2), corner(4, 3, 0.6), corner(0, 3, -0.3)];
    for (const d of [-0.3, 0.3]) {
      for (const loop of offsetRegion([contour], d)) {
        for (const { x, y } of pointsAlong(loop, 8)) {
          expect(Math.abs(bruteDistance([contour], x, y) - Math.abs(d))).toBeLessThan(1e-9);
        }
      }
    }
  });
});

describe('offsetRegion, exact everywhere (brute-force distance)', () => {
  for (const family of Object.keys(families)) {
    it(family, () => {
      let points = 0;
      let exact = 0;
      for (let seed = 1; seed <= 40; seed++) {
        const random = seeded(seed * 104_729);
        const contour = randomContour(family, random);
        const distance = (random() - 0.5) * 1.2;
        for (const loop of offsetRegion(prepareRegion([contour], 0.6), distance)) {
          for (const { x, y } of pointsAlong(loop, 5)) {
            const error = Math.abs(bruteDistance([contour], x, y) - Math.abs(distance));
            expect(error).toBeLessThan(1e-6);
            points++;
            if (error < 1e-9) exact++;
          }
        }
      }
      expect(exact / Math.max(1, points)).toBeGreaterThan(0.999);
    });
  }
});
