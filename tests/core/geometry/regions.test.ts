import { describe, expect, it } from 'vitest';
import { combineRegions } from '../../../core/geometry/combine-regions';
import type { Region } from '../../../core/geometry/contour';
import { leastDistance } from '../../../core/geometry/least-distance';
import { closeRegion, openRegion } from '../../../core/geometry/open-region';
import { indexOf } from '../../../core/geometry/segment-index';
import { tableOfRegion } from '../../../core/geometry/segment-table';
import { isInside, windingNumber } from '../../../core/geometry/winding';
import { reversedContour } from '../../../core/geometry/contour-measures';
import { regionArea } from '../../support/contour-facts';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import { angleShape, circle, polygon, roundedSlot, square } from '../../support/shapes';

describe('windingNumber', () => {
  it('is 1 inside, 0 outside, -1 inside a clockwise contour', () => {
    expect(windingNumber(square(2), 1, 1)).toBe(1);
    expect(windingNumber(square(2), 3, 1)).toBe(0);
    expect(windingNumber(reversedContour(square(2)), 1, 1)).toBe(-1);
  });

  it('knows the cap between chord and arc, on both sides of it', () => {
    const slot = roundedSlot(10, 2);
    for (const [x, y, inside] of [
      [11.9, 0, 1],
      [12.1, 0, 0],
      [-1.9, 0, 1],
      [-2.1, 0, 0],
      [11.5, 1.5, 0],
      [10, 0, 1],
    ] as const) {
      expect(windingNumber(slot, x, y)).toBe(inside);
    }
  });

  it('counts a vertex on the ray once', () => {
    const diamond = polygon([0, -1], [1, 0], [0, 1], [-1, 0]);
    expect(windingNumber(diamond, 0, 0)).toBe(1);
    expect(windingNumber(diamond, -2, 0)).toBe(0);
    expect(windingNumber(diamond, -2, 1)).toBe(0);
  });

  it('agrees with the area of random points (Monte Carlo, 3 standard deviations)', () => {
    const random = seeded(5);
    const shape = randomContour('random arcs', random);
    let hits = 0;
    const shots = 20_000;
    for (let k = 0; k < shots; k++)
      if (windingNumber(shape, random() * 12 - 6, random() * 12 - 6) === 1) hits++;
    const share = regionArea([shape]) / 144;
    expect(Math.abs(hits / shots - share)).toBeLessThan(3 * Math.sqrt((share * (1 - share)) / shots));
  });
});

describe('combineRegions', () => {
  const lens = 2 * (Math.PI / 3 - Math.sqrt(3) / 4); // two unit circles a radius apart

  it('two circles: lens, union, moon', () => {
    const [a, b]: [Region, Region] = [[circle(1)], [circle(1, 1, 0)]];
    expect(regionArea(combineRegions(a, b, 'intersection'))).toBeCloseTo(lens, 12);
    expect(regionArea(combineRegions(a, b, 'union'))).toBeCloseTo(2 * Math.PI - lens, 12);
    expect(regionArea(combineRegions(a, b, 'difference'))).toBeCloseTo(Math.PI - lens, 12);
  });

  it('squares that share a side, a corner, all of it', () => {
    expect(combineRegions([square(1)], [square(1, 1, 0)], 'union')).toHaveLength(1);
    expect(regionArea(combineRegions([square(1)], [square(1, 1, 0)], 'union'))).toBeCloseTo(2, 12);
    expect(combineRegions([square(1)], [square(1, 1, 0)], 'intersection')).toEqual([]);
    expect(regionArea(combineRegions([square(1)], [square(1, 1, 1)], 'union'))).toBeCloseTo(2, 12);
    expect(combineRegions([square(1)], [square(1)], 'difference')).toEqual([]);
    expect(regionArea(combineRegions([square(1)], [square(1)], 'union'))).toBeCloseTo(1, 12);
  });

  it('a hole punched out is a clockwise loop', () => {
    const result = combineRegions([square(4)], [circle(1, 2, 2)], 'difference');
    expect(result).toHaveLength(2);
    expect(regionArea(result)).toBeCloseTo(16 - Math.PI, 12);
    expect(isInside(result, 2, 2)).toBe(false);
  });

  it('|a| + |b| = |a ∪ b| + |a ∩ b| and a − b with a ∩ b makes a, for random pairs', () => {
    for (const family of Object.keys(families)) {
      for (let seed = 1; seed <= 25; seed++) {
        const random = seeded(seed * 31_337);
        const a: Region = [randomContour(family, random)];
        const b: Region = [
          randomContour(family, random).map((v) => ({ ...v, x: v.x + 0.37, y: v.y - 0.21 })),
        ];
        const both = regionArea(combineRegions(a, b, 'intersection'));
        const union = regionArea(combineRegions(a, b, 'union'));
        const only = regionArea(combineRegions(a, b, 'difference'));
        expect(Math.abs(regionArea(a) + regionArea(b) - union - both), `${family} ${seed}`).toBeLessThan(
          1e-6,
        );
        expect(Math.abs(regionArea(a) - both - only), `${family} ${seed}`).toBeLessThan(1e-6);
      }
    }
  });
});

describe('opening and closing', () => {
  it('takes the corners of a square: 4 − π of the radius squared', () => {
    expect(regionArea(openRegion([square(10)], 1))).toBeCloseTo(100 - (4 - Math.PI), 12);
    expect(regionArea(closeRegion([angleShape(10, 4)], 1))).toBeCloseTo(64 + 1 - Math.PI / 4, 12);
  });

  it('is idempotent and its remainder is the difference, in every family', () => {
    for (const family of Object.keys(families)) {
      for (let seed = 1; seed <= 40; seed++) {
        const random = seeded(seed);
        const contour: Region = [randomContour(family, random)];
        const radius = 0.02 + random() * 0.4;
        const opened = openRegion(contour, radius);
        const again = openRegion(opened, radius);
        expect(again.length, `${family} ${seed}`).toBe(opened.length);
        expect(Math.abs(regionArea(again) - regionArea(opened)), `${family} ${seed}`).toBeLessThan(1e-6);
        const lost = regionArea(combineRegions(contour, opened, 'difference'));
        expect(Math.abs(regionArea(contour) - regionArea(opened) - lost), `${family} ${seed}`).toBeLessThan(
          1e-6,
        );
        const closed = closeRegion(contour, radius);
        const gained = regionArea(combineRegions(closed, contour, 'difference'));
        expect(Math.abs(regionArea(closed) - regionArea(contour) - gained), `${family} ${seed}`).toBeLessThan(
          1e-6,
        );
      }
    }
  });
});

describe('leastDistance', () => {
  const between = (a: Region, b: Region) => leastDistance(tableOfRegion(a), indexOf(tableOfRegion(b)));

  it('circle to circle along the line of centres', () => {
    const { distance, at } = between([circle(1)], [circle(2, 4, 3)]);
    expect(distance).toBeCloseTo(5 - 3, 12);
    expect(at.x).toBeCloseTo(0.8, 12);
    expect(at.y).toBeCloseTo(0.6, 12);
  });

  it('circle in a larger one, circle to a side, corner to a side', () => {
    expect(between([circle(1, 0.25, 0)], [circle(2)]).distance).toBeCloseTo(0.75, 12);
    expect(between([circle(1, 5, 5)], [square(2, 0, 4)]).distance).toBeCloseTo(2, 12);
    expect(between([polygon([5, 1], [6, 0], [6, 2])], [square(2)]).distance).toBeCloseTo(3, 12);
  });
});
