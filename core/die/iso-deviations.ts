import { rowAt, type SizeStep } from './iso-tolerances';

/** Letters of the shaft classes that the table has; holes of the same letters are derived from them. */
export const deviationLetters = ['d', 'e', 'f', 'g', 'h', 'k', 'm', 'n', 'p', 'r', 's'] as const;
export type DeviationLetter = (typeof deviationLetters)[number];

/**
 * Fundamental deviation of a shaft class at a nominal size, mm (ISO 286-1:2010, tables 4 and 5): the upper deviation
 * (not positive) for d to h, the lower one (not negative) for k to s. Null for sizes outside 0 to 500 mm.
 * Example: g at 30 mm is −0.007 mm.
 */
export function fundamentalDeviation(letter: DeviationLetter, nominal: number): number | null {
  const row = rowAt(letter === 'r' || letter === 's' ? fineSteps : mainSteps, nominal);
  const microns = row?.microns[letter];
  return microns === undefined ? null : microns / 1000;
}

/** d to h hang below the nominal size, k to s stand above it. */
export const isBelowNominal = (letter: DeviationLetter): boolean => 'defgh'.includes(letter);

interface DeviationRow extends SizeStep {
  readonly microns: Readonly<Partial<Record<DeviationLetter, number>>>;
}

type MainRow = readonly [
  over: number,
  upTo: number,
  d: number,
  e: number,
  f: number,
  g: number,
  k: number,
  m: number,
  n: number,
  p: number,
];

/** ISO 286-1:2010, tables 4 and 5, µm. k is that of grades 4 to 7; in other grades it is 0. */
const mainTable: readonly MainRow[] = [
  [0, 3, -20, -14, -6, -2, 0, 2, 4, 6],
  [3, 6, -30, -20, -10, -4, 1, 4, 8, 12],
  [6, 10, -40, -25, -13, -5, 1, 6, 10, 15],
  [10, 18, -50, -32, -16, -6, 1, 7, 12, 18],
  [18, 30, -65, -40, -20, -7, 2, 8, 15, 22],
  [30, 50, -80, -50, -25, -9, 2, 9, 17, 26],
  [50, 80, -100, -60, -30, -10, 2, 11, 20, 32],
  [80, 120, -120, -72, -36, -12, 3, 13, 23, 37],
  [120, 180, -145, -85, -43, -14, 3, 15, 27, 43],
  [180, 250, -170, -100, -50, -15, 4, 17, 31, 50],
  [250, 315, -190, -110, -56, -17, 4, 20, 34, 56],
  [315, 400, -210, -125, -62, -18, 4, 21, 37, 62],
  [400, 500, -230, -135, -68, -20, 5, 23, 40, 68],
];

/** r and s change in finer steps. ISO 286-1:2010, table 5, µm. */
const fineTable: readonly (readonly [over: number, upTo: number, r: number, s: number])[] = [
  [0, 3, 10, 14],
  [3, 6, 15, 19],
  [6, 10, 19, 23],
  [10, 18, 23, 28],
  [18, 30, 28, 35],
  [30, 50, 34, 43],
  [50, 65, 41, 53],
  [65, 80, 43, 59],
  [80, 100, 51, 71],
  [100, 120, 54, 79],
  [120, 140, 63, 92],
  [140, 160, 65, 100],
  [160, 180, 68, 108],
  [180, 200, 77, 122],
  [200, 225, 80, 130],
  [225, 250, 84, 140],
  [250, 280, 94, 158],
  [280, 315, 98, 170],
  [315, 355, 108, 190],
  [355, 400, 114, 208],
  [400, 450, 126, 232],
  [450, 500, 132, 252],
];

const mainSteps: readonly DeviationRow[] = mainTable.map(([over, upTo, d, e, f, g, k, m, n, p]) => ({
  over,
  upTo,
  microns: { d, e, f, g, h: 0, k, m, n, p },
}));

const fineSteps: readonly DeviationRow[] = fineTable.map(([over, upTo, r, s]) => ({
  over,
  upTo,
  microns: { r, s },
}));
