import { done, failed, type Result } from '../problem';
import { headingOf, numberOf } from './point-columns';

/** Parts a line into cells, quotes and outer blanks taken off. */
export type Splitter = (line: string) => readonly string[];

/**
 * What parts the columns of a list: whichever of semicolon, tab, comma and blanks makes points of most lines that begin
 * with a number. Where commas could be decimal commas as well ("1,5,2,5": two numbers or four) nothing is
 * guessed.
 */
export function splitterOf(lines: readonly string[]): Result<Splitter> {
  const rows = lines.filter((line) => /^\s*["']?[-+.,]?\d/.test(line)).slice(0, looked);
  const fits = (split: Splitter) => rows.filter((row) => isPoint(split(row))).length;
  const best = splitters.reduce((one, other) => (fits(other) > fits(one) ? other : one));
  if (fits(best) === 0)
    return done(splitters.find((split) => lines.some((line) => headingOf(split(line)))) ?? byBlanks);
  if (best === byComma && rows.every(couldBeDecimalCommas)) return ambiguous(rows[0] ?? '');
  return done(best);
}

/** Lines looked at: enough to tell, few enough for a long list. */
const looked = 500;

const cellsBy =
  (separator: RegExp): Splitter =>
  (line) =>
    line
      .trim()
      .split(separator)
      .map((cell) =>
        cell
          .trim()
          .replace(/^(["'])(.*)\1$/, '$2')
          .trim(),
      );

const byComma = cellsBy(/,/);
const byBlanks = cellsBy(/\s+/);
const splitters: readonly Splitter[] = [cellsBy(/;/), cellsBy(/\t/), byComma, byBlanks];

/** Two numbers at least, wherever a name may stand, and no cell with two in it. */
const isPoint = (cells: readonly string[]): boolean =>
  cells.filter((cell) => Number.isFinite(numberOf(cell))).length >= 2 &&
  !cells.some((cell) => /\d\s+[-+.,]?\d/.test(cell));

/** Four or more cells of bare digits: with commas as decimal commas this is two numbers. */
const couldBeDecimalCommas = (row: string): boolean => /^\s*[-+]?\d+,\d+,\s*[-+]?\d+,\d+\s*$/.test(row);

const ambiguous = (row: string) =>
  failed(
    'points-ambiguous',
    `It cannot be told whether the commas in "${row.trim().slice(0, 40)}" part the columns or are decimal commas`,
    '',
    'Export the list with semicolons between the columns, or with decimal points.',
  );
