import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as portable from '../../../core/geometry/portable-math';

const ulp = (x: number): number =>
  2 ** Math.max(-1074, Math.floor(Math.log2(Math.abs(x) || 2 ** -1060)) - 52);

/** Within a few units in the last place of the engine's own. */
function near(own: number, engine: number, units = 2): void {
  if (Object.is(own, engine)) return;
  expect(Math.abs(own - engine), `${own} against ${engine}`).toBeLessThanOrEqual(units * ulp(engine));
}

const real = fc.double({ noNaN: true, noDefaultInfinity: true });
const angle = fc.oneof(
  fc.double({ min: -10, max: 10, noNaN: true }),
  fc.double({ min: -1e5, max: 1e5, noNaN: true }),
);
const runs = { numRuns: 20_000 };

// Checked against the engine that runs the test (V8's own fdlibm or libm, both below 1 unit in the last place).
describe('portable mathematics', () => {
  it('sines and cosines', () => {
    fc.assert(
      fc.property(angle, (x) => {
        near(portable.sin(x), Math.sin(x));
        near(portable.cos(x), Math.cos(x));
      }),
      runs,
    );
    for (let k = -16; k <= 16; k++) {
      near(portable.sin((k * Math.PI) / 4), Math.sin((k * Math.PI) / 4));
      near(portable.cos((k * Math.PI) / 4), Math.cos((k * Math.PI) / 4));
    }
  });

  it('tangents', () => {
    fc.assert(
      fc.property(angle, (x) => near(portable.tan(x), Math.tan(x), 3)),
      runs,
    );
  });

  it('arc tangents, all round', () => {
    fc.assert(
      fc.property(real, real, angle, (y, x, small) => {
        near(portable.atan(small), Math.atan(small));
        near(portable.atan(y), Math.atan(y));
        near(portable.atan2(y, x), Math.atan2(y, x), 3);
        near(portable.atan2(small, 1), Math.atan2(small, 1), 3);
      }),
      runs,
    );
    for (const y of [0, -0, 1, -1, 1e-300, -1e300])
      for (const x of [0, -0, 1, -1, 1e-300, -1e300]) {
        const [own, engine] = [portable.atan2(y, x), Math.atan2(y, x)];
        near(own, engine);
        expect(Object.is(own, -0) || own < 0).toBe(Object.is(engine, -0) || engine < 0);
      }
  });

  it('arc sines and arc cosines', () => {
    fc.assert(
      fc.property(fc.double({ min: -1, max: 1, noNaN: true }), (x) => {
        near(portable.asin(x), Math.asin(x), 3);
        near(portable.acos(x), Math.acos(x), 3);
      }),
      runs,
    );
    expect(portable.asin(1)).toBe(Math.PI / 2);
    expect(portable.acos(-1)).toBe(Math.PI);
    expect(portable.acos(1.1)).toBeNaN();
  });

  it('cube roots', () => {
    fc.assert(
      fc.property(real, (x) => near(portable.cbrt(x), Math.cbrt(x))),
      runs,
    );
    for (const x of [1, 8, 27, 1000, 1e-9]) near(portable.cbrt(x), Math.cbrt(x), 1);
  });

  it('logarithms and decades', () => {
    fc.assert(
      fc.property(fc.double({ min: 5e-324, max: 1e308, noNaN: true }), (x) => {
        near(portable.log(x), Math.log(x), 2);
        const decade = portable.decadeOf(x);
        expect(portable.powerOfTen(decade) <= x && x < portable.powerOfTen(decade + 1)).toBe(true);
      }),
      runs,
    );
    for (let k = -300; k <= 300; k++) expect(portable.decadeOf(portable.powerOfTen(k))).toBe(k);
    expect([portable.log(0), portable.log(-1), portable.log(Infinity)]).toEqual([-Infinity, NaN, Infinity]);
  });
});
