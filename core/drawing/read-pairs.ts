import { done, failed, type Result } from '../problem';
import { isBlank, latin1, type MissingEnd, type Pairs } from './pairs';
import type { Damage } from './raw-drawing';

/**
 * Splits the bytes of an ASCII DXF into group pairs (DXF reference, "Group codes": a line with a code, a line with a
 * value). Takes CR, LF and CRLF, padded codes, 999 comments (dropped), blank lines where a code belongs (skipped,
 * noted) and text after EOF (ignored). A code line that is no number is refused with its line.
 */
export function readPairs(bytes: Uint8Array): Result<Pairs> {
  const lines = lineStarts(bytes);
  // Blank lines at the very end are no lines.
  let lineCount = lines.count;
  while (lineCount > 0 && isBlankLine(bytes, lines, lineCount - 1)) lineCount--;
  const room = (lineCount >> 1) + 1;
  const columns: Columns = {
    count: 0,
    codes: new Int32Array(room),
    starts: new Int32Array(room),
    ends: new Int32Array(room),
    places: new Int32Array(room),
  };
  const blanks: Blanks = { count: 0, first: 0 };
  const all = (missingEnd: MissingEnd | null) => done(pairsOf(bytes, columns, blanks, missingEnd));
  for (let i = 0; i < lineCount; i += 2) {
    while (i < lineCount && isBlankLine(bytes, lines, i)) {
      if (blanks.count++ === 0) blanks.first = i + 1;
      i++;
    }
    const code = codeOf(bytes, lines, i);
    if (Number.isNaN(code)) return notACode(columns.count, i + 1, lineText(bytes, lines, i));
    // A file may end on an empty value only where more was to come.
    if (i + 1 >= lineCount) return all({ place: i + 1, torn: true });
    if (code === 999) continue;
    if (code === 0 && lineText(bytes, lines, i + 1) === 'EOF') return all(null);
    const at = columns.count++;
    columns.codes[at] = code;
    columns.starts[at] = lines.starts[i + 1] as number;
    columns.ends[at] = lines.ends[i + 1] as number;
    columns.places[at] = i + 2;
  }
  const last = columns.count - 1;
  const endsSection =
    columns.codes[last] === 0 && lineText(bytes, lines, (columns.places[last] as number) - 1) === 'ENDSEC';
  const endsWhole = isLineEnd(bytes[bytes.length - 1]);
  return all({ place: lineCount, torn: !endsWhole && !endsSection });
}

interface Columns {
  count: number;
  readonly codes: Int32Array;
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  readonly places: Int32Array;
}

interface Blanks {
  count: number;
  first: number;
}

interface Lines {
  readonly count: number;
  readonly starts: Int32Array;
  readonly ends: Int32Array;
}

const isLineEnd = (byte: number | undefined): boolean => byte === 10 || byte === 13;

/** A line ends with LF, with any number of CR and an LF, or with a CR alone. */
function lineStarts(bytes: Uint8Array): Lines {
  let most = 1;
  for (const byte of bytes) if (byte === 10 || byte === 13) most++;
  const starts = new Int32Array(most);
  const ends = new Int32Array(most);
  let count = 0;
  starts[0] = 0;
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i];
    if (byte !== 10 && byte !== 13) continue;
    ends[count++] = i;
    if (byte === 13) {
      let after = i + 1;
      while (bytes[after] === 13) after++;
      if (bytes[after] === 10) i = after;
    }
    starts[count] = i + 1;
  }
  ends[count++] = bytes.length;
  return { count, starts, ends };
}

function isBlankLine(bytes: Uint8Array, lines: Lines, i: number): boolean {
  for (let at = lines.starts[i] as number; at < (lines.ends[i] as number); at++)
    if (!isBlank(bytes[at] as number)) return false;
  return true;
}

const lineText = (bytes: Uint8Array, { starts, ends }: Lines, i: number): string =>
  latin1(bytes, starts[i] as number, ends[i] as number).trim();

/** A whole number of at most five digits with a sign; NaN for all else. */
function codeOf(bytes: Uint8Array, { starts, ends }: Lines, i: number): number {
  let at = starts[i] as number;
  let end = ends[i] as number;
  while (at < end && isBlank(bytes[at] as number)) at++;
  while (end > at && isBlank(bytes[end - 1] as number)) end--;
  const isNegative = bytes[at] === 45;
  if (isNegative || bytes[at] === 43) at++;
  if (at >= end || end - at > 5) return Number.NaN;
  let code = 0;
  for (; at < end; at++) {
    const digit = (bytes[at] as number) - 48;
    if (digit < 0 || digit > 9) return Number.NaN;
    code = code * 10 + digit;
  }
  return isNegative ? -code : code;
}

function pairsOf(bytes: Uint8Array, columns: Columns, blanks: Blanks, missingEnd: MissingEnd | null): Pairs {
  const damage: Damage[] = [];
  if (blanks.count > 0) {
    const say = `${blanks.count} blank ${blanks.count === 1 ? 'line' : 'lines'} between the groups of the file, the first on line ${blanks.first}, skipped.`;
    damage.push({ weight: 'note', say });
  }
  return { ...columns, bytes, placeWord: 'line', damage, missingEnd };
}

function notACode(pairsBefore: number, line: number, found: string) {
  const shown = printable(found.length > 30 ? `${found.slice(0, 30)}…` : found);
  if (pairsBefore === 0) {
    return failed(
      'drawing-not-dxf',
      'The file is not a DXF drawing: it does not begin with a group code',
      `line ${line}: "${shown}"`,
      'Choose a DXF file, or save the drawing as DXF in the program it was made with.',
    );
  }
  return failed(
    'drawing-damaged',
    `A group code was expected, found "${shown}"`,
    `line ${line}`,
    'The file is damaged here; have it saved as DXF and sent again.',
  );
}

const printable = (text: string): string => text.replace(/[\u0000-\u001f\u007f-\u009f]/g, '·');
