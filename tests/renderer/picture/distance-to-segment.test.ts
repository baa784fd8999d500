import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointOnSegment } from '../../../renderer/canvas/point-on-segment';
import { distanceToSegment } from '../../../renderer/picture/distance-to-segment';

describe('distanceToSegment', () => {
  const line = [
    { x: 0, y: 0, bulge: 0 },
    { x: 10, y: 0, bulge: 0 },
  ] as const;
  const upperHalf = [
    { x: 1, y: 0, bulge: 1 },
    { x: -1, y: 0, bulge: 0 },
  ] as const;

  it('measures to a line and its ends', () => {
    expect(distanceToSegment({ x: 5, y: 3 }, ...line)).toBe(3);
    expect(distanceToSegment({ x: 13, y: 4 }, ...line)).toBe(5);
    expect(distanceToSegment({ x: 2, y: 0 }, line[0], line[0])).toBe(2);
  });

  it('measures to an arc and its ends', () => {
    expect(distanceToSegment({ x: 0, y: 3 }, ...upperHalf)).toBeCloseTo(2, 12);
    expect(distanceToSegment({ x: 0, y: 0.25 }, ...upperHalf)).toBeCloseTo(0.75, 12);
    expect(distanceToSegment({ x: 0, y: -1 }, ...upperHalf)).toBeCloseTo(Math.SQRT2, 12);
  });

  it('agrees with the nearest of many points along the segment', () => {
    const number = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(
        number,
        number,
        number,
        number,
        fc.double({ min: -1, max: 1, noNaN: true }),
        number,
        number,
        (x0, y0, x1, y1, bulge, x, y) => {
          fc.pre(Math.hypot(x1 - x0, y1 - y0) > 0.1 && (bulge === 0 || Math.abs(bulge) > 0.01));
          const from = { x: x0, y: y0, bulge };
          const to = { x: x1, y: y1, bulge: 0 };
          let nearest = Infinity;
          for (let i = 0; i <= 2000; i++) {
            const point = pointOnSegment(from, to, i / 2000);
            nearest = Math.min(nearest, Math.hypot(point.x - x, point.y - y));
          }
          const distance = distanceToSegment({ x, y }, from, to);
          expect(distance).toBeLessThanOrEqual(nearest + 1e-9);
          // Neighbouring points are at most 45 mm / 2000 apart (longest half circle in the range).
          expect(distance).toBeGreaterThan(nearest - 0.0225);
        },
      ),
      { numRuns: 300 },
    );
  });
});
