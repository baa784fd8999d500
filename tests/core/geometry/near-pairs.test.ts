import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eachNearPair } from '../../../core/geometry/near-pairs';

type PlainBox = readonly [x: number, y: number, width: number, height: number];

function columns(boxes: readonly PlainBox[]): Float64Array {
  return new Float64Array(boxes.flatMap(([x, y, width, height]) => [x, y, x + width, y + height]));
}

/** All pairs compared with all: the definition. */
function bruteForce(boxes: readonly PlainBox[], within: number): string[] {
  return boxes
    .flatMap(([x, y, width, height], i) =>
      boxes.slice(i + 1).map(([u, v, w, h], k) => {
        const apart = Math.max(u - (x + width), x - (u + w), v - (y + height), y - (v + h));
        return apart <= within ? `${i} ${i + 1 + k}` : '';
      }),
    )
    .filter((pair) => pair !== '')
    .sort();
}

describe('eachNearPair', () => {
  it('finds every pair once, as comparing all with all does', () => {
    const whole = (max: number) => fc.integer({ min: 0, max });
    const box = fc.tuple(whole(40), whole(40), whole(6), whole(6));
    fc.assert(
      fc.property(fc.array(box, { maxLength: 70 }), whole(5), (boxes, within) => {
        const found: string[] = [];
        eachNearPair(columns(boxes), boxes.length, within, (i, j) => {
          found.push(`${i} ${j}`);
          return false;
        });
        expect(found.sort()).toEqual(bruteForce(boxes, within));
      }),
      { numRuns: 300 },
    );
  });

  it('stops when told to', () => {
    const boxes = columns(Array.from({ length: 50 }, () => [0, 0, 1, 1]));
    let seen = 0;
    eachNearPair(boxes, 50, 0, () => ++seen === 7);
    expect(seen).toBe(7);
  });

  it('finds the pairs of boxes that stand in no order in the plane', () => {
    const scattered = Array.from({ length: 3000 }, (_, i): PlainBox => {
      const k = (i * 1_597) % 3000;
      return [2 * (k % 60), 2 * Math.floor(k / 60), 1.5, 1.5];
    });
    let found = 0;
    eachNearPair(columns(scattered), 3000, 0.6, () => ++found < 0);
    // A grid of 60 × 50 boxes, each near those beside, above and at its corners.
    expect(found).toBe(59 * 50 + 60 * 49 + 2 * 59 * 49);
  });
});
