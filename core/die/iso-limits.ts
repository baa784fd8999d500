import { done, failed, type Result } from '../problem';
import {
  deviationLetters,
  fundamentalDeviation,
  isBelowNominal,
  type DeviationLetter,
} from './iso-deviations';
import { standardTolerance, toleranceGrades, type ToleranceGrade } from './iso-tolerances';

/** Limit deviations from the nominal size, mm. */
export interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/**
 * Limit deviations of a tolerance class at a nominal size (ISO 286-1:2010): a capital letter is a hole, a small one a
 * shaft. Holes D to H mirror the shafts; K, M, N to grade 8 and P, R, S to grade 7 take Δ = ITn − IT(n−1) on top over
 * 3 mm. A class that is not in the tables, or a size outside 0 to 500 mm, is a problem.
 * Examples at 30 mm: H7 +0.021/0, g6 −0.007/−0.020, K7 +0.006/−0.015.
 */
export function isoLimits(toleranceClass: string, nominal: number): Result<Limits> {
  const parts = /^(js|[d-hkmnprs])(\d{1,2})$/i.exec(toleranceClass.trim());
  const grade = toleranceGrades.find((known) => known === Number(parts?.[2]));
  const name = parts?.[1];
  if (!name || !grade || !isOneCase(name)) return unknownClass(toleranceClass);
  const width = standardTolerance(grade, nominal);
  if (width === null) return outOfRange(nominal);
  const isHole = name === name.toUpperCase();
  const letter = name.toLowerCase();
  if (letter === 'js') return done({ lower: -width / 2, upper: width / 2 });
  if (!isDeviation(letter)) return unknownClass(toleranceClass);
  const deviation = baseDeviation(letter, grade, nominal, isHole);
  if (isHole) return done(holeLimits(letter, grade, nominal, deviation, width));
  return done(
    isBelowNominal(letter)
      ? { lower: exact(deviation - width), upper: deviation }
      : { lower: deviation, upper: exact(deviation + width) },
  );
}

function holeLimits(
  letter: DeviationLetter,
  grade: ToleranceGrade,
  nominal: number,
  deviation: number,
  width: number,
): Limits {
  if (isBelowNominal(letter)) {
    const lower = deviation === 0 ? 0 : -deviation;
    return { lower, upper: exact(lower + width) };
  }
  const upper = exact(upperOfTightHole(letter, grade, nominal, deviation));
  return { lower: exact(upper - width), upper };
}

function upperOfTightHole(
  letter: DeviationLetter,
  grade: ToleranceGrade,
  nominal: number,
  deviation: number,
): number {
  // Named exceptions of the standard: M6 over 250 up to 315 mm is −9 µm, and N9 to N11 over 3 mm begin at 0.
  if (letter === 'm' && grade === 6 && nominal > 250 && nominal <= 315) return -9 / 1000;
  if (letter === 'n' && grade > 8 && nominal > 3) return 0;
  const finer = toleranceGrades.find((known) => known === grade - 1);
  const last = letter === 'k' || letter === 'm' || letter === 'n' ? 8 : 7;
  if (nominal <= 3 || grade > last || finer === undefined) return -deviation;
  return -deviation + (standardTolerance(grade, nominal) ?? 0) - (standardTolerance(finer, nominal) ?? 0);
}

/** k stands above the nominal size in grades 4 to 7; K, which has a Δ up to grade 8, is derived from it there too. */
function baseDeviation(
  letter: DeviationLetter,
  grade: ToleranceGrade,
  nominal: number,
  isHole: boolean,
): number {
  if (letter === 'k' && grade > (isHole ? 8 : 7)) return 0;
  return fundamentalDeviation(letter, nominal) ?? 0;
}

/** Whole tenths of a micron: sums of thousandths are not exact in binary. */
const exact = (mm: number): number => Math.round(mm * 10_000) / 10_000;

const isOneCase = (name: string): boolean => name === name.toLowerCase() || name === name.toUpperCase();
const isDeviation = (letter: string): letter is DeviationLetter =>
  (deviationLetters as readonly string[]).includes(letter);

const unknownClass = (toleranceClass: string) =>
  failed(
    'iso-class-unknown',
    `"${toleranceClass}" is not a tolerance class of the table`,
    'fit',
    'Type a letter from D to S and a grade from 4 to 11, such as H7 for a hole or g6 for a shaft.',
  );

const outOfRange = (nominal: number) =>
  failed(
    'iso-size-out-of-range',
    `The nominal size ${nominal} mm is outside the table, which ends at 500 mm`,
    'nominal size',
    'Type a nominal size above 0 and up to 500 mm, or type the allowance.',
  );
