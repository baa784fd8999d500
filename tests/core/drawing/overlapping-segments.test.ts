import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GrowingBox } from '../../../core/drawing/chain-box';
import { eachOverlap } from '../../../core/drawing/overlapping-segments';
import { sortByPlace } from '../../../core/drawing/sort-by-place';
import { contourBox } from '../../../core/geometry/contour-measures';
import { addSegment, emptyTable, num, segmentBoxes } from '../../../core/geometry/segment-table';
import { codesOf, drawn, polyline } from './drawn';

const coordinate = fc.integer({ min: -20, max: 20 });
const vertex = fc.record({ x: coordinate, y: coordinate, bulge: fc.constantFrom(0, 0, 0.5, -1, 1) });
const contours = fc.array(fc.array(vertex, { minLength: 2, maxLength: 40 }), { minLength: 1, maxLength: 12 });

/** Every pair, found by looking at all of them. */
function byBruteForce(boxes: Float64Array, count: number): string[] {
  const pairs: string[] = [];
  for (let i = 0; i < count; i++)
    for (let j = i + 1; j < count; j++) {
      const isApart =
        num(boxes, 4 * j) > num(boxes, 4 * i + 2) ||
        num(boxes, 4 * j + 2) < num(boxes, 4 * i) ||
        num(boxes, 4 * j + 1) > num(boxes, 4 * i + 3) ||
        num(boxes, 4 * j + 3) < num(boxes, 4 * i + 1);
      if (!isApart) pairs.push(`${i} ${j}`);
    }
  return pairs;
}

describe('pairs of segments whose boxes overlap', () => {
  it('are those that looking at all pairs finds, each once, whatever the contours', () => {
    fc.assert(
      fc.property(contours, (all) => {
        const table = emptyTable(all.reduce((sum, { length }) => sum + length, 0));
        const firsts = Int32Array.from(
          all.map((contour) => {
            const first = table.count;
            contour.forEach(({ x, y, bulge }, i) => {
              const to = contour[(i + 1) % contour.length] ?? { x, y };
              addSegment(table, x, y, to.x, to.y, bulge);
            });
            return first;
          }),
        );
        const found: string[] = [];
        expect(
          eachOverlap(table, firsts, (i, j) => {
            found.push(`${i} ${j}`);
            return true;
          }),
        ).toBe(true);
        expect(found.sort()).toEqual(byBruteForce(segmentBoxes(table), table.count).sort());
      }),
      { numRuns: 200 },
    );
  });

  it('stop when the visitor has had enough', () => {
    const table = emptyTable(3);
    for (let i = 0; i < 3; i++) addSegment(table, 0, i, 5, 5 - i, 0);
    let seen = 0;
    expect(eachOverlap(table, Int32Array.from([0, 1, 2]), () => ++seen < 2)).toBe(false);
    expect(seen).toBe(2);
  });

  it('a spiral of 8000 edges, each turn around all before it, is one outline that does not cross itself', () => {
    const turns = 1000;
    const out: number[][] = [];
    const back: number[][] = [];
    for (let k = 0; k < turns; k++) {
      const [r, s] = [2 * k + 3, 2 * k + 4];
      out.push([r, -r + 2], [r, r], [-r, r], [-r, -r]);
      back.push([s, -s + 2], [s, s], [-s, s], [-s, -s]);
    }
    const drawing = drawn(polyline(true, [...out, ...back.reverse()]));
    expect(drawing.contours).toHaveLength(1);
    expect(codesOf(drawing)).toEqual([]);
  });
});

describe('sorting by place', () => {
  it('is by x, then y, then what is compared, then as they came, however many there are', () => {
    const places = fc.array(fc.tuple(fc.constantFrom(-0, 0, -1.5, 1e-9, 3, 3.0000001), coordinate), {
      minLength: 2100,
      maxLength: 2300,
    });
    fc.assert(
      fc.property(places, (all) => {
        const x = Float64Array.from(all.map(([value]) => value));
        const y = Float64Array.from(all.map(([, value]) => value));
        const naive = [...all.keys()].sort(
          (a, b) => (x[a] ?? 0) - (x[b] ?? 0) || (y[a] ?? 0) - (y[b] ?? 0) || (a % 7) - (b % 7) || a - b,
        );
        expect([...sortByPlace(x, y, (a, b) => (a % 7) - (b % 7))]).toEqual(naive);
      }),
      { numRuns: 20 },
    );
  });
});

describe('a box that grows', () => {
  it('is the one that the general measure finds', () => {
    fc.assert(
      fc.property(fc.array(vertex, { minLength: 3, maxLength: 9 }), (contour) => {
        const { minX, minY, maxX, maxY } = new GrowingBox().addChain(contour, contour.length);
        const wanted = contourBox(contour);
        for (const [side, other] of [
          [minX, wanted.minX],
          [minY, wanted.minY],
          [maxX, wanted.maxX],
          [maxY, wanted.maxY],
        ] as const)
          expect(side).toBeCloseTo(other, 9);
      }),
    );
  });
});
