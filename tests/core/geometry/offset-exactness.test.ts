import { describe, expect, it } from 'vitest';
import type { Contour, Region } from '../../../core/geometry/contour';
import { offsetRegion } from '../../../core/geometry/offset-region';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import { bruteDistance, pointsAlong, regionArea, regionLength, variants } from '../../support/contour-facts';
import { circle, corner, polygon, square } from '../../support/shapes';

const areaAndLength = (region: Region) => [regionArea(region), regionLength(region)] as const;

describe('arcs over 180 degrees', () => {
  /** A keyhole: a disc of radius 5 with a slot of half width 3 that leaves it 4 from the centre and ends at x = 20. */
  const keyhole: Contour = [
    corner(4, -3),
    corner(20, -3),
    corner(20, 3),
    // From (4, 3) round by (-5, 0) to (4, -3): 2π − 2·atan(3/4), in two arcs.
    corner(4, 3, Math.tan((Math.PI - Math.atan(3 / 4)) / 4)),
    corner(-5, 0, Math.tan((Math.PI - Math.atan(3 / 4)) / 4)),
  ];
  /** The same at another offset: radius r, half width h, end at x. */
  const keyholeArea = (r: number, h: number, end: number): number => {
    const half = Math.asin(h / r);
    const leave = Math.sqrt(r * r - h * h);
    return (Math.PI - half) * r * r + h * leave + 2 * h * (end - leave);
  };

  it('inward: disc and slot shrink together, and the disc of the offset rolls about the corners between them', () => {
    // What is left about each corner C: from P on the circle to X, where circle and slot cross, to Q on the slot's side;
    // less the sector about C and the circle's cap over PX.
    const [c, p, x, q] = [
      [4, 3],
      [3.2, 2.4],
      [Math.sqrt(12), 2],
      [4, 2],
    ] as const;
    const kite = Math.abs((x[0] - c[0]) * (q[1] - p[1]) - (x[1] - c[1]) * (q[0] - p[0])) / 2;
    const turn = Math.atan(3 / 4) - Math.asin(1 / 2);
    const left = kite - Math.acos(0.6) / 2 - (16 / 2) * (turn - Math.sin(turn));
    for (const source of variants(keyhole)) {
      const offset = offsetRegion([source], -1);
      expect(offset).toHaveLength(1);
      expect(regionArea(offset)).toBeCloseTo(keyholeArea(4, 2, 19) + 2 * left, 9);
    }
  });

  it('outward: the notches between disc and slot close along the parallels', () => {
    for (const source of variants(keyhole)) {
      const offset = offsetRegion([source], 0.5);
      const rolled = (Math.PI / 2) * 0.25 - 2 * 0.25;
      expect(regionArea(offset)).toBeCloseTo(keyholeArea(5.5, 3.5, 20.5) + rolled, 9);
    }
  });
});

describe('parallels that coincide', () => {
  it('a slot of exactly twice the offset closes, and leaves no seam', () => {
    for (const depth of [2, 7]) {
      const slotted = polygon(
        [0, 0],
        [10, 0],
        [10, 10],
        [6, 10],
        [6, 10 - depth],
        [4, 10 - depth],
        [4, 10],
        [0, 10],
      );
      for (const source of variants(slotted)) {
        // The walls' parallels lie on one line in the middle; outside, only the mouth between two rolled corners is left.
        const offset = offsetRegion([source], 1);
        expect(offset).toHaveLength(1);
        const mouth = 2 - Math.PI / 2;
        expect(regionArea(offset)).toBeCloseTo(100 + 40 + Math.PI - mouth, 8);
      }
    }
  });

  it('two plates whose facing edges are exactly twice the offset apart become one', () => {
    const plates: Region = [square(10), square(10, 12, 0)];
    const [area] = areaAndLength(offsetRegion(plates, 1));
    // Two plates grown by themselves, 2·(100 + 40 + π); they touch along a side.
    expect(area).toBeCloseTo(2 * (140 + Math.PI), 8);
  });

  it('a bar of exactly twice the offset vanishes', () => {
    for (const source of variants(polygon([0, 0], [20, 0], [20, 2], [0, 2]))) {
      expect(regionArea(offsetRegion([source], -1))).toBeCloseTo(0, 9);
    }
  });
});

describe('full circles', () => {
  it('grow, shrink and vanish at their radius', () => {
    expect(offsetRegion([circle(3)], -3)).toEqual([]);
    const [area, length] = areaAndLength(offsetRegion([circle(3, 10_000, -10_000)], -2.5));
    expect(area).toBeCloseTo(Math.PI / 4, 9);
    expect(length).toBeCloseTo(Math.PI, 9);
  });
});

// The promise: every output point at the offset's distance, within 1e-6 mm and 99.9 % within 1e-9, from 0.5 mm to 1 m.
describe('parts from 0.5 mm to 1 m (brute-force distance)', () => {
  for (const size of [0.5, 5, 100, 1000]) {
    it(`${size} mm`, () => {
      let [points, exact] = [0, 0];
      for (const family of Object.keys(families)) {
        for (let seed = 1; seed <= 8; seed++) {
          const random = seeded(seed * 49_979_687);
          const drawn = randomContour(family, random);
          const scale = size / widthOf(drawn);
          const source = drawn.map(({ x, y, bulge }) => ({ x: x * scale, y: y * scale, bulge }));
          const distance = (random() - 0.5) * 0.08 * size;
          for (const loop of offsetRegion([source], distance)) {
            for (const { x, y } of pointsAlong(loop, 4)) {
              const error = Math.abs(bruteDistance([source], x, y) - Math.abs(distance));
              expect(error, `${family} ${seed}`).toBeLessThan(1e-6);
              points++;
              if (error < 1e-9) exact++;
            }
          }
        }
      }
      expect(exact / points).toBeGreaterThan(0.999);
    });
  }
});

const widthOf = (contour: Contour): number =>
  Math.max(...contour.map(({ x }) => x)) - Math.min(...contour.map(({ x }) => x));
