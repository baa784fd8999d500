import { describe, expect, it, test } from 'vitest';
import { type deviationLetters, fundamentalDeviation } from '../../../core/die/iso-deviations';
import { fitAllowance } from '../../../core/die/fit-allowance';
import { isoLimits } from '../../../core/die/iso-limits';
import { standardTolerance, standardTolerances, toleranceGrades } from '../../../core/die/iso-tolerances';

/** Limits in µm, as the published tables print them. */
function limits(toleranceClass: string, nominal: number): [upper: number, lower: number] {
  const reply = isoLimits(toleranceClass, nominal);
  if (!reply.ok) throw new Error(reply.problem.what);
  return [Math.round(reply.value.upper * 1e4) / 10, Math.round(reply.value.lower * 1e4) / 10];
}

// ISO 286-1, annex: i = 0.45·∛D + 0.001·D µm with D the geometric mean of the step; IT5 to IT10 are 7, 10, 16, 25, 40
// and 64 i, and IT(n + 5) = 10 IT(n). The published rows are rounded, and for the small sizes adjusted beyond that.
describe('ISO 286-1 standard tolerances against the formula that they were made by', () => {
  const multiples = { 5: 7, 6: 10, 7: 16, 8: 25, 9: 40, 10: 64 } as const;
  const unit = (over: number, upTo: number) => {
    const mean = Math.sqrt(Math.max(over, 1) * upTo);
    return 0.45 * Math.cbrt(mean) + mean / 1000;
  };

  it.each(standardTolerances.filter(({ over }) => over >= 18).map(({ over, upTo }) => [over, upTo]))(
    'over %d up to %d mm: the formula, rounded',
    (over, upTo) => {
      for (const [grade, times] of Object.entries(multiples)) {
        const exact = times * unit(over ?? 0, upTo ?? 0);
        const printed = 1000 * (standardTolerance(Number(grade) as 5, upTo ?? 0) ?? 0);
        // Whole µm up to 100 (62.2 is printed as 63), steps of 5 above: 185.6 is printed as 185, 139 as 140.
        expect(Math.abs(printed - exact)).toBeLessThanOrEqual(exact < 100 ? 1.2 : 4.5);
      }
    },
  );

  it('IT11 is ten times IT6', () => {
    for (const { upTo } of standardTolerances) {
      const it6 = standardTolerance(6, upTo) ?? 0;
      // The one row that is not: 75 µm at 3 to 6 mm.
      expect(standardTolerance(11, upTo)).toBeCloseTo(upTo === 6 ? 0.075 : 10 * it6, 9);
    }
  });

  it('grows with grade and size everywhere', () => {
    let before: readonly number[] = toleranceGrades.map(() => 0);
    for (const { microns } of standardTolerances) {
      microns.forEach((value, k) => {
        expect(value).toBeGreaterThan(k === 0 ? 0 : (microns[k - 1] ?? 0));
        expect(value).toBeGreaterThanOrEqual(before[k] ?? 0);
      });
      before = microns;
    }
  });
});

// ISO 286-1, annex, formulae of the fundamental deviations: d −16·D^0.44, e −11·D^0.41, f −5.5·D^0.41, g −2.5·D^0.34,
// k +0.6·∛D, m IT7 − IT6, n +5·D^0.34, p IT7 + 0 to 5, s IT8 + 1 to 4 up to 50 mm, IT7 + 0.4·D above, r the geometric
// mean of p and s; rounded.
describe('ISO 286-1 fundamental deviations against their formulae', () => {
  const width = (grade: 6 | 7 | 8, size: number) => 1000 * (standardTolerance(grade, size) ?? Number.NaN);
  const at = (letter: (typeof deviationLetters)[number], size: number) =>
    1000 * (fundamentalDeviation(letter, size) ?? Number.NaN);

  const steps = standardTolerances
    .filter(({ over }) => over >= 3)
    .map(({ over, upTo }) => [over, upTo] as const);

  test.each(steps)('over %d up to %d mm', (over, upTo) => {
    const mean = Math.sqrt(over * upTo);
    const near = (value: number, exact: number) =>
      expect(Math.abs(value - exact)).toBeLessThanOrEqual(Math.abs(exact) > 45 ? 5 : 1);
    near(at('d', upTo), -16 * mean ** 0.44);
    near(at('e', upTo), -11 * mean ** 0.41);
    near(at('f', upTo), -5.5 * mean ** 0.41);
    near(at('g', upTo), -2.5 * mean ** 0.34);
    near(at('k', upTo), 0.6 * Math.cbrt(mean));
    near(at('m', upTo), width(7, upTo) - width(6, upTo));
    near(at('n', upTo), 5 * mean ** 0.34);
    expect(at('p', upTo) - width(7, upTo)).toBeGreaterThanOrEqual(-0.001);
    expect(at('p', upTo) - width(7, upTo)).toBeLessThanOrEqual(5.001);
    if (upTo <= 50) {
      expect(at('s', upTo) - width(8, upTo)).toBeGreaterThanOrEqual(0.999);
      expect(at('s', upTo) - width(8, upTo)).toBeLessThanOrEqual(4.001);
      near(at('r', upTo), Math.sqrt(at('p', upTo) * at('s', upTo)));
    }
  });
});

// Rows of the published tables of limit deviations (ISO 286-2), µm.
describe('ISO 286-2, well-known rows', () => {
  test.each([
    ['H7', 30, 21, 0],
    ['g6', 30, -7, -20],
    ['h6', 30, 0, -13],
    ['k6', 30, 15, 2],
    ['m6', 30, 21, 8],
    ['n6', 30, 28, 15],
    ['p6', 30, 35, 22],
    ['s6', 30, 48, 35],
    ['f7', 30, -20, -41],
    ['H8', 50, 39, 0],
    ['f7', 50, -25, -50],
    ['H6', 10, 9, 0],
    ['r6', 80, 62, 43],
    ['d9', 100, -120, -207],
    ['G7', 30, 28, 7],
    ['K7', 30, 6, -15],
    ['M7', 30, 0, -21],
    ['N7', 30, -7, -28],
    ['P7', 30, -14, -35],
    ['R7', 30, -20, -41],
    ['S7', 30, -27, -48],
    ['K8', 30, 10, -23],
    ['N9', 30, 0, -52],
    ['P9', 30, -22, -74],
    ['js6', 30, 6.5, -6.5],
    ['JS7', 8, 7.5, -7.5],
  ] as const)('%s at %d mm', (toleranceClass, size, upper, lower) => {
    expect(limits(toleranceClass, size)).toEqual([upper, lower]);
  });

  it('a class or a size that the table has not is a problem in words', () => {
    for (const [name, size] of [
      ['H12', 30],
      ['x6', 30],
      ['H7', 501],
      ['H7', 0],
      ['Js7', 30],
      ['', 30],
    ] as const) {
      const reply = isoLimits(name, size);
      expect(reply.ok).toBe(false);
      if (!reply.ok) expect(reply.problem.whatToDo.length).toBeGreaterThan(20);
    }
  });
});

// ISO 286-1: clearance, transition and interference fits, by the limits above.
describe('fits per side', () => {
  const fit = (hole: string, shaft: string, nominal = 30) => {
    const reply = fitAllowance({ rule: 'iso', hole, shaft, nominal }, 'plug');
    if (!reply.ok) throw new Error(reply.problem.what);
    return reply.value;
  };

  it('H7/g6 at 30 mm is a slip fit of 7 to 41 µm on the diameter', () => {
    const { leastGap, greatestGap, gap, kind, holeOffset, plugOffset } = fit('H7', 'g6');
    expect([2 * leastGap, 2 * greatestGap].map((mm) => mm * 1000)).toEqual([
      expect.closeTo(7, 9),
      expect.closeTo(41, 9),
    ]);
    expect(gap).toBeCloseTo(0.012, 12);
    expect(holeOffset).toBeCloseTo(0.0105 / 2, 12);
    expect(plugOffset).toBeCloseTo(-0.0135 / 2, 12);
    expect(kind).toBe('slip');
  });

  it('H7/k6 may be either, H7/s6 presses', () => {
    expect(fit('H7', 'k6').kind).toBe('transition');
    expect(fit('H7', 's6').kind).toBe('press');
    expect(fit('H7', 'h6').kind).toBe('slip');
  });

  it('a typed allowance is taken from the member that is not given', () => {
    const plugGiven = fitAllowance({ rule: 'allowance', perSide: 0.0127 }, 'plug');
    const holeGiven = fitAllowance({ rule: 'allowance', perSide: -0.005 }, 'hole');
    expect(plugGiven.ok && plugGiven.value).toMatchObject({
      holeOffset: 0.0127,
      plugOffset: 0,
      kind: 'slip',
    });
    expect(holeGiven.ok && holeGiven.value).toMatchObject({
      holeOffset: 0,
      plugOffset: 0.005,
      kind: 'press',
    });
  });

  it('classes that are swapped are refused', () => {
    expect(fitAllowance({ rule: 'iso', hole: 'g6', shaft: 'H7', nominal: 30 }, 'plug').ok).toBe(false);
  });
});
