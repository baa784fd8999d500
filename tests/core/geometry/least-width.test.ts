import { describe, expect, it } from 'vitest';
import type { Contour, Region } from '../../../core/geometry/contour';
import { reversedContour } from '../../../core/geometry/contour-measures';
import { leastWidth } from '../../../core/geometry/least-width';
import { offsetRegion } from '../../../core/geometry/offset-region';
import { variants } from '../../support/contour-facts';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import {
  angleShape,
  circle,
  corner,
  polygon,
  roundedRectangle,
  roundedSlot,
  square,
} from '../../support/shapes';

const width = (region: Region, side: 'inside' | 'outside' = 'inside') => leastWidth(region, side)?.width;

/** A bar with a waist of radius 3 on either side, 2 wide at its middle. */
const waisted: Contour = [
  corner(0, 0),
  corner(7, 0, -1),
  corner(13, 0),
  corner(20, 0),
  corner(20, 8),
  corner(13, 8, -1),
  corner(7, 8),
  corner(0, 8),
];

describe('narrowest place of a region', () => {
  it.each<[string, Contour, number]>([
    ['a square', square(7), 7],
    ['a circle', circle(4), 8],
    ['a rounded rectangle', roundedRectangle(20, 10, 3), 10],
    ['a slot with round ends', roundedSlot(12, 1.5), 3],
    ['the legs of an L', angleShape(10, 3), 3],
    ['a waist between two round notches', waisted, 2],
    ['a finger', polygon([0, 0], [10, 0], [10, 4], [16, 4], [16, 4.75], [10, 4.75], [10, 10], [0, 10]), 0.75],
    [
      'a neck between two reflex corners',
      polygon([0, 0], [5, 4], [10, 0], [10, 10], [6, 5.5], [0, 10]),
      Math.hypot(1, 1.5),
    ],
  ])('%s', (_, contour, expected) => {
    for (const variant of variants(contour)) expect(width([variant])).toBeCloseTo(expected, 9);
  });

  it('a triangle has no two faces that look at each other', () => {
    expect(leastWidth([polygon([0, 0], [10, 0], [5, 8])], 'inside')).toBeNull();
    expect(leastWidth([], 'inside')).toBeNull();
  });

  it('the wall of a ring, and of an eccentric one where it is thinnest', () => {
    expect(width([circle(10), reversedContour(circle(7))])).toBeCloseTo(3, 9);
    expect(width([circle(10), reversedContour(circle(7, 1, 0))])).toBeCloseTo(2, 9);
  });

  it('says where it is', () => {
    const place = leastWidth([waisted], 'inside');
    expect(place?.from.x).toBeCloseTo(10, 9);
    expect([place?.from.y, place?.to.y].sort()).toEqual([expect.closeTo(3, 9), expect.closeTo(5, 9)]);
  });
});

describe('narrowest place around a region', () => {
  it('the wall between two openings', () => {
    expect(width([circle(3), circle(2, 9, 0)], 'outside')).toBeCloseTo(4, 9);
    expect(width([square(5), square(5, 7, 1)], 'outside')).toBeCloseTo(2, 9);
  });

  it('a tongue that reaches into one opening', () => {
    const tongue = polygon([0, 0], [20, 0], [20, 10], [10.6, 10], [10.6, 2], [9.4, 2], [9.4, 10], [0, 10]);
    expect(width([tongue], 'outside')).toBeCloseTo(1.2, 9);
  });

  it('walls that are thick enough not to matter are not looked for', () => {
    expect(leastWidth([circle(3), circle(2, 9, 0)], 'outside', 3)).toBeNull();
    expect(leastWidth([circle(3), circle(2, 9, 0)], 'outside', 5)?.width).toBeCloseTo(4, 9);
  });

  it('one convex opening leaves no wall', () => {
    expect(leastWidth([circle(5)], 'outside')).toBeNull();
  });
});

// Definition: a disc of the width fits at the place, and a smaller offset never cuts a region in two there.
describe('on random contours', () => {
  it.each(Object.keys(families))('%s: no inward offset below half the width parts it', (family) => {
    const random = seeded(20);
    let found = 0;
    for (let k = 0; k < 25; k++) {
      const contour = randomContour(family, random);
      const place = leastWidth([contour], 'inside');
      if (!place) continue;
      found++;
      expect(offsetRegion([contour], -place.width * 0.4999)).toHaveLength(1);
    }
    expect(found).toBeGreaterThan(3);
  });
});
