import { done, failed, type Result } from '../problem';
import { fieldsByColumn, headingOf, type Columns } from './point-columns';
import { splitterOf } from './point-separator';

/** A point as a measuring machine wrote it, in the unit of its file. */
export interface ListedPoint {
  readonly x: number;
  readonly y: number;
  /** As the file names it, or its number in the list. */
  readonly id: string;
  /** What it belongs to; empty where the file doesn't say. */
  readonly feature: string;
}

export interface PointList {
  /** What the heading states; null where it doesn't. */
  readonly unit: 'mm' | 'inch' | null;
  readonly points: readonly ListedPoint[];
  /** Lines that hold no point, with the reason, e.g. a remark. */
  readonly skipped: readonly { readonly line: number; readonly text: string }[];
}

/** More points than any machine measures on a contour, few enough to be fitted in a moment. */
const mostPoints = 20_000;

/** From zero, mm or inch: no part is larger, and a fit to such a point is none. */
const farthest = 100_000;

/**
 * Reads a list of measured points: x, y and, where they are there, a name and a feature. Columns are parted by semicolons, tabs,
 * commas or blanks; where commas don't part them a comma is a decimal comma. A heading names the columns in any order and may state the unit;
 * without one they are x, y, name, feature. Lines that begin with # and lines without two numbers are left out and listed; a line that begins like a point
 * but holds something else is a problem, never guessed at.
 */
export function readPoints(text: string): Result<PointList> {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const splitter = splitterOf(lines);
  if (!splitter.ok) return splitter;
  const split = splitter.value;
  const points: ListedPoint[] = [];
  const skipped: { line: number; text: string }[] = [];
  let columns: Columns = { x: 0, y: 1, id: 2, feature: 3 };
  let unit: PointList['unit'] = null;
  for (const [k, line] of lines.entries()) {
    if (line.trim() === '') continue;
    const cells = split(line);
    const heading = points.length === 0 ? headingOf(cells) : null;
    if (heading) {
      columns = heading;
      unit = unitIn(line) ?? unit;
      continue;
    }
    const point = fieldsByColumn(cells, columns);
    if (point) {
      if (Math.max(Math.abs(point.x), Math.abs(point.y)) > farthest) return tooFar(k + 1, line);
      points.push({ ...point, id: point.id === '' ? String(points.length + 1) : point.id });
      if (points.length > mostPoints) return tooMany;
    } else if (/^\s*["']?[-+.,]?\d/.test(line)) {
      return badLine(k + 1, line);
    } else {
      unit = points.length === 0 ? (unitIn(line) ?? unit) : unit;
      skipped.push({ line: k + 1, text: line.trim().slice(0, 80) });
    }
  }
  if (points.length === 0) return noPoints;
  return done({ unit, points, skipped });
}

function unitIn(text: string): PointList['unit'] {
  if (/\b(mm|millimet(?:er|re)s?)\b/i.test(text)) return 'mm';
  // "in" alone is a word as well: only beside a coordinate, in brackets or after "unit".
  return /\binch(es)?\b|[([]\s*in\s*[)\]]|\bunits?\s*[:=]?\s*in\b|\b[xy][ _-]in\b/i.test(text)
    ? 'inch'
    : null;
}

const badLine = (line: number, text: string) =>
  failed(
    'points-bad-line',
    `"${text.trim().slice(0, 40)}" is not a measured point: x and y are wanted, two numbers`,
    `line ${line}`,
    'Correct the line, or have the list exported again.',
  );

const tooFar = (line: number, text: string) =>
  failed(
    'points-too-far',
    `"${text.trim().slice(0, 40)}" lies farther from zero than any part is large`,
    `line ${line}`,
    'Correct the line, or have the list exported again.',
  );

const noPoints = failed(
  'points-none',
  'The list holds no measured points',
  '',
  'Choose a list with x and y on each line, apart by a semicolon, comma, tab or blanks.',
);

const tooMany = failed(
  'points-too-many',
  `The list holds more than ${mostPoints.toLocaleString('en-US')} points`,
  '',
  'Have fewer points measured or exported.',
);
