import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundArc } from '../../../core/output/round-arc';

/** A program of 5 decimals in mm up to 100 mm: whole steps of 0.01 µm. */
const step = fc.integer({ min: -10_000_000, max: 10_000_000 });
const bulge = fc.double({ min: 0.001, max: 1, noNaN: true }).chain((b) => fc.constantFrom(b, -b));

describe('roundArc', () => {
  it('gives a quarter circle its exact centre', () => {
    // RS274/NGC, NIST IR 6556, worked arc: from (7,7) to (10,16) about (10,11), I3 J4, radius 5; here in steps.
    const angle = Math.atan2(5, 0) - Math.atan2(-4, -3);
    const centre = roundArc({ x: 7e4, y: 7e4 }, { x: 10e4, y: 16e4 }, Math.tan((angle - 2 * Math.PI) / 4));
    expect(centre).toEqual({ x: 3e4, y: 4e4 });
  });

  it('puts the centre on the side the bulge says', () => {
    expect(roundArc({ x: 0, y: 0 }, { x: 1000, y: 1000 }, Math.tan(Math.PI / 8))).toEqual({ x: 0, y: 1000 });
    expect(roundArc({ x: 0, y: 0 }, { x: 1000, y: 1000 }, -Math.tan(Math.PI / 8))).toEqual({ x: 1000, y: 0 });
  });

  it('takes an arc that rounding makes straight, and one of no size, for a line', () => {
    expect(roundArc({ x: 0, y: 0 }, { x: 1000, y: 0 }, 0)).toBeNull();
    expect(roundArc({ x: 0, y: 0 }, { x: 1000, y: 0 }, 0.0009)).toBeNull();
    expect(roundArc({ x: 0, y: 0 }, { x: 1000, y: 0 }, 0.0011)).not.toBeNull();
    expect(roundArc({ x: 5, y: 5 }, { x: 5, y: 5 }, 1)).toBeNull();
    expect(roundArc({ x: 0, y: 0 }, { x: 3, y: 0 }, 1)).toBeNull();
  });

  it('makes the radii agree within 2√2 steps, whatever the arc', () => {
    fc.assert(
      fc.property(step, step, step, step, bulge, (x1, y1, x2, y2, b) => {
        const centre = roundArc({ x: x1, y: y1 }, { x: x2, y: y2 }, b);
        fc.pre(centre !== null);
        if (!centre) return;
        expect(Number.isInteger(centre.x) && Number.isInteger(centre.y)).toBe(true);
        const start = Math.hypot(centre.x, centre.y);
        const end = Math.hypot(x2 - x1 - centre.x, y2 - y1 - centre.y);
        // Bound for ends and centre rounded one by one; taking the best of four centres stays well below it.
        expect(Math.abs(start - end)).toBeLessThan(2 * Math.SQRT2);
      }),
      { numRuns: 2000 },
    );
  });

  it('agrees better than rounding the centre by itself', () => {
    const worst = { best: 0, naive: 0 };
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 4000 }), fc.integer({ min: 5, max: 4000 }), bulge, (x, y, b) => {
        const centre = roundArc({ x: 0, y: 0 }, { x, y }, b);
        if (!centre) return;
        const lift = (1 - b * b) / (4 * b);
        const naive = { x: Math.round(x / 2 - y * lift), y: Math.round(y / 2 + x * lift) };
        const differ = (c: { x: number; y: number }) =>
          Math.abs(Math.hypot(c.x, c.y) - Math.hypot(x - c.x, y - c.y));
        worst.best = Math.max(worst.best, differ(centre));
        worst.naive = Math.max(worst.naive, differ(naive));
      }),
      { numRuns: 2000 },
    );
    expect(worst.best).toBeLessThan(worst.naive);
  });

  it('stays within 2√2 steps of the exact arc at its middle', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50, max: 100_000 }),
        fc.integer({ min: 50, max: 100_000 }),
        bulge,
        (x, y, b) => {
          const centre = roundArc({ x: 0, y: 0 }, { x, y }, b);
          fc.pre(centre !== null);
          if (!centre) return;
          const length = Math.hypot(x, y);
          // Middle of the exact arc: a sagitta of b·L/2 to the right of the chord (DXF reference, group 42).
          const middle = {
            x: x / 2 + (y / length) * ((b * length) / 2),
            y: y / 2 - (x / length) * ((b * length) / 2),
          };
          const radius = (Math.hypot(centre.x, centre.y) + Math.hypot(x - centre.x, y - centre.y)) / 2;
          const off = Math.abs(Math.hypot(middle.x - centre.x, middle.y - centre.y) - radius);
          expect(off).toBeLessThan(2 * Math.SQRT2);
        },
      ),
      { numRuns: 2000 },
    );
  });
});
