import type { Vertex } from '../geometry/contour';
import { done, failed, type Result } from '../problem';
import type { DrawingUnit } from '../units';
import { limits } from './limits';
import { latin1 } from './pairs';
import { piecesBox } from './piece-box';
import type { Damage, Piece, RawDrawing } from './raw-drawing';

/**
 * Whether text is a list of points: its first line with content holds two or three numbers, or is a heading over such
 * a line.
 */
export function looksLikeCsv(bytes: Uint8Array): boolean {
  const lines = latin1(bytes, 0, Math.min(bytes.length, 4096)).split(/\r\n|\r|\n/);
  const [first = '', second = ''] = lines.map(withoutRemark).filter((line) => line !== '');
  return fieldsOf(first) !== null || (isHeading(first) && fieldsOf(second) !== null);
}

/**
 * Reads a list of points, x and y on a line, apart by a comma, semicolon, tab or blanks; with semicolons, tabs or
 * blanks a comma is a decimal comma. A blank line ends a contour and begins the next; every contour is closed. A
 * heading may state the unit ("x mm, y mm"); what stands behind # is a remark.
 */
export function readCsv(bytes: Uint8Array): Result<RawDrawing> {
  const lines = latin1(bytes, 0, bytes.length).split(/\r\n|\r|\n/);
  const pieces: Piece[] = [];
  let points: Vertex[] = [];
  let statedUnit: DrawingUnit | null = null;
  let seen = 0;
  let hasThird = false;
  const endContour = (): void => {
    const closed = closedRun(points);
    if (closed) pieces.push(closed);
    points = [];
  };
  for (const [i, raw] of lines.entries()) {
    const line = withoutRemark(raw);
    if (line === '') {
      // A remark alone on a line does not end a contour.
      if (raw.trim() === '') endContour();
      continue;
    }
    const fields = fieldsOf(line);
    if (!fields) {
      if (seen > 0 || !isHeading(line)) return badLine(i + 1, raw);
      statedUnit = unitIn(line);
      continue;
    }
    const [x = Number.NaN, y = Number.NaN] = fields;
    if (Math.abs(x) > limits.coordinate || Math.abs(y) > limits.coordinate) return badLine(i + 1, raw);
    if (fields.length > 2) hasThird = true;
    points.push({ x, y, bulge: 0 });
    if (++seen > limits.curvePoints) return tooMany;
  }
  endContour();
  const damage: Damage[] = hasThird
    ? [{ weight: 'note', say: 'The third number of a point is not read; the outline is flat.' }]
    : [];
  return done({
    format: 'csv',
    statedUnit,
    pieces,
    unused: [],
    damage,
    texts: [],
    dimensions: [],
    box: piecesBox(pieces),
  });
}

function closedRun(points: readonly Vertex[]): Piece | null {
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first || !last || points.length < 2) return null;
  const isClosed = first.x === last.x && first.y === last.y;
  const chain = isClosed ? points : [...points, first];
  return {
    layer: '0',
    kind: 'points',
    colour: 0,
    hidden: null,
    isFilling: false,
    closed: true,
    parts: [{ type: 'chain', chain }],
  };
}

const withoutRemark = (line: string): string => line.replace(/#.*$/, '').trim();

const longestLine = 400;

const isHeading = (line: string): boolean =>
  line.length <= longestLine && /^"?\s*x\b[^\d]*[,;\t ]\s*"?\s*y\b[^\d]*$/i.test(line);

/**
 * Two or three numbers; null for any other line. Commas part them where that gives numbers ("1.5, 2.5"); else
 * semicolons, tabs or blanks do, and a comma is a decimal comma ("1,5 2,5").
 */
function fieldsOf(line: string): number[] | null {
  if (line.length > longestLine) return null;
  const isApart = /[;\t]/.test(line);
  const parts = isApart ? line.split(/\s*[;\t]\s*/) : line.split(/\s+/);
  return (isApart ? null : numbers(line.split(','))) ?? numbers(parts.map((part) => part.replace(',', '.')));
}

function numbers(parts: readonly string[]): number[] | null {
  const fields = parts.filter((part, i) => i < 2 || part.trim() !== '').map(numberOf);
  return fields.length >= 2 && fields.length <= 3 && fields.every(Number.isFinite) ? fields : null;
}

const numberOf = (text: string): number =>
  /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d{1,3})?$/.test(text.trim()) ? Number(text) : Number.NaN;

function unitIn(heading: string): DrawingUnit | null {
  if (/\bmm\b/i.test(heading)) return 'mm';
  if (/\b(in|inch|inches)\b|"\s*$/i.test(heading)) return 'inch';
  return /\bcm\b/i.test(heading) ? 'cm' : null;
}

function badLine(line: number, text: string) {
  const shown = text
    .trim()
    .slice(0, 40)
    .replace(/[\u0000-\u001f\u007f-\u009f]/g, '·');
  return failed(
    'drawing-bad-number',
    `"${shown}" is not a point: x and y are wanted, two numbers`,
    `line ${line}`,
    'Correct the line, or have the list exported again.',
  );
}

const tooMany = failed(
  'drawing-too-large',
  `The list holds more than ${limits.curvePoints.toLocaleString('en-US')} points`,
  '',
  'Thin the points out, or ask for the outline as a DXF.',
);
