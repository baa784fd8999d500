import { describe, expect, it } from 'vitest';
import { bridgeWidth } from '../../../core/die/strip-rules';
import { stripLayout, type StripLayout } from '../../../core/die/strip-layout';
import type { Contour } from '../../../core/geometry/contour';
import { contourArea, contourBox } from '../../../core/geometry/contour-measures';
import { leastDistance } from '../../../core/geometry/least-distance';
import { movedContour } from '../../../core/geometry/moved-contour';
import { indexOf } from '../../../core/geometry/segment-index';
import { tableOfRegion } from '../../../core/geometry/segment-table';
import { isInside } from '../../../core/geometry/winding';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import { angleShape, circle, polygon, roundedRectangle, square } from '../../support/shapes';

const lay = (outline: Contour, up: 1 | 2 = 1, turn: number | null = null, bridge = 2, edge = 3) =>
  stripLayout({ outline, up, bridge, edge, turn });

/** All blanks of three steps, as they lie in the strip. */
const blanksOf = (outline: Contour, { places, feed }: StripLayout): readonly Contour[] =>
  [0, 1, 2].flatMap((k) => places.map((at) => movedContour(outline, { ...at, x: at.x + k * feed })));

/** Least distance between any two blanks; negative where two overlap. */
function leastBridge(blanks: readonly Contour[]): number {
  let least = Infinity;
  blanks.forEach((a, i) => {
    for (const b of blanks.slice(i + 1)) {
      const { distance } = leastDistance(tableOfRegion([a]), indexOf(tableOfRegion([b])));
      const inside = isInside([a], b[0]?.x ?? 0, b[0]?.y ?? 0) || isInside([b], a[0]?.x ?? 0, a[0]?.y ?? 0);
      least = Math.min(least, inside ? -1 : distance);
    }
  });
  return least;
}

function expectSound(outline: Contour, strip: StripLayout): void {
  const blanks = blanksOf(outline, strip);
  expect(leastBridge(blanks)).toBeGreaterThanOrEqual(strip.bridge - 1e-7);
  const boxes = blanks.map(contourBox);
  expect(Math.min(...boxes.map(({ minY }) => minY)) - strip.bottom).toBeCloseTo(strip.edge, 7);
  expect(strip.bottom + strip.width - Math.max(...boxes.map(({ maxY }) => maxY))).toBeCloseTo(strip.edge, 7);
  const stock = strip.feed * strip.width;
  expect(strip.used).toBeCloseTo((strip.up * contourArea(outline)) / stock, 9);
  expect(strip.used).toBeLessThan(1);
}

// Exact geometry: closed forms of feed, width and stock used.
describe('blank on the strip, one up', () => {
  it('a circle: diameter and bridge, however it is turned', () => {
    const strip = lay(circle(10));
    expect(strip.feed).toBeCloseTo(22, 9);
    expect(strip.width).toBeCloseTo(26, 9);
    expect(strip.used).toBeCloseTo((Math.PI * 100) / (22 * 26), 9);
  });

  it('a square lies square', () => {
    const strip = lay(square(10));
    expect(strip.feed).toBeCloseTo(12, 6);
    expect(strip.width).toBeCloseTo(16, 6);
  });

  it('a long rectangle lies with its length across or along, whichever saves stock', () => {
    // Along: (30 + 2)·(10 + 6) = 512; across: (10 + 2)·(30 + 6) = 432.
    const strip = lay(polygon([0, 0], [30, 0], [30, 10], [0, 10]));
    expect(strip.feed * strip.width).toBeCloseTo(432, 5);
  });

  it('a fixed angle is kept', () => {
    const strip = lay(square(10), 1, Math.PI / 4);
    // Corner to corner: the diagonal and the bridge.
    expect(strip.feed).toBeCloseTo(Math.SQRT2 * 10 + 2, 9);
    expect(strip.width).toBeCloseTo(Math.SQRT2 * 10 + 6, 9);
  });

  it('chevrons nest into each other', () => {
    const chevron = polygon([0, 0], [4, 0], [10, 10], [4, 20], [0, 20], [6, 10]);
    const strip = lay(chevron, 1, 0);
    // The arms are 4 wide along the strip; square to the sloping edge the bridge of 2 takes 2·√(6² + 10²)/10.
    expect(strip.feed).toBeCloseTo(4 + (2 * Math.hypot(6, 10)) / 10, 9);
    expectSound(chevron, strip);
  });
});

describe('two up', () => {
  it('lies the same wherever the drawing has its zero', () => {
    const shape = angleShape(20, 8);
    const here = lay(shape, 2);
    const far = shape.map((v) => ({ ...v, x: v.x + 3000, y: v.y - 500 }));
    const there = lay(far, 2);
    expect(there.used).toBeCloseTo(here.used, 6);
    expectSound(far, there);
  });

  it('triangles turned against each other save stock', () => {
    const triangle = polygon([0, 0], [20, 0], [10, 17]);
    const one = lay(triangle);
    const two = lay(triangle, 2);
    expect(two.used).toBeGreaterThan(1.2 * one.used);
    expectSound(triangle, two);
  });

  it('circles in two rows, staggered', () => {
    const two = lay(circle(10), 2);
    // Rows a step of √3/2 · 22 apart: the densest packing.
    expect(two.feed).toBeCloseTo(22, 6);
    expect(two.width).toBeCloseTo(22 * (Math.sqrt(3) / 2) + 20 + 6, 6);
    expectSound(circle(10), two);
  });

  it('two L shapes make one block', () => {
    const two = lay(angleShape(20, 8), 2);
    expect(two.used).toBeGreaterThan(lay(angleShape(20, 8)).used);
    expectSound(angleShape(20, 8), two);
  });
});

// Definition, on outlines of every family: nowhere less than the bridge, edges exact, and one up never wider apart
// than needed: a step shorter by a hundredth would break the bridge.
describe('on random outlines', () => {
  it.each(Object.keys(families))('%s', (family) => {
    const random = seeded(3);
    for (let k = 0; k < 4; k++) {
      const outline = randomContour(family, random);
      const strip = lay(outline, 1, 0.3 * k, 0.5, 0.6);
      expectSound(outline, strip);
      const tighter = { ...strip, feed: strip.feed * 0.99 };
      expect(leastBridge(blanksOf(outline, tighter))).toBeLessThan(strip.bridge);
      expectSound(outline, lay(outline, 2, 0.3 * k, 0.5, 0.6));
    }
  });

  it('the found angle takes no more stock than any whole degree', () => {
    const outline = angleShape(20, 5);
    const stock = ({ feed, width }: StripLayout) => feed * width;
    const best = stock(lay(outline));
    for (let degree = 0; degree < 180; degree++) {
      expect(best).toBeLessThanOrEqual(stock(lay(outline, 1, (degree * Math.PI) / 180)) * (1 + 1e-6));
    }
  });
});

// Scrap bridges as recalled from Paquin & Crowley, Die Design Fundamentals: checked for order only.
it('bridges grow with thickness and length, and are never thinner than 1/32 in', () => {
  expect(bridgeWidth(0.1, 20, 1)).toBeCloseTo(25.4 / 32, 12);
  expect(bridgeWidth(2, 50, 1)).toBe(2);
  expect(bridgeWidth(2, 100, 1)).toBe(2.5);
  expect(bridgeWidth(2, 300, 1)).toBe(3);
  expect(bridgeWidth(2, 50, 2)).toBe(2.5);
});

it('a rounded rectangle uses a little less than a sharp one', () => {
  expect(lay(roundedRectangle(20, 10, 3)).used).toBeLessThan(
    lay(polygon([0, 0], [20, 0], [20, 10], [0, 10])).used,
  );
});
