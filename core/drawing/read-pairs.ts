import { done, failed, type Result } from '../problem';
import { isBlank, latin1, textBlocks, type MissingEnd, type Pairs } from './pairs';
import type { Damage } from './raw-drawing';

/**
 * Splits the bytes of an ASCII DXF into group pairs (DXF reference, "Group codes": a line with a code, a line with a
 * value). Takes CR, LF and CRLF, padded codes, 999 comments (dropped), blank lines where a code belongs (skipped,
 * noted) and text after EOF (ignored). A code line that is no number is refused with its line.
 */
export function readPairs(bytes: Uint8Array): Result<Pairs> {
  const columns = new Columns(bytes.length);
  const lines = new LineReader(bytes);
  let blanks = 0;
  let firstBlank = 0;
  const all = (missingEnd: MissingEnd | null) =>
    done(columns.pairs(bytes, blankDamage(blanks, firstBlank), missingEnd));
  while (lines.next()) {
    if (lines.isBlank()) {
      if (blanks++ === 0) firstBlank = lines.number;
      continue;
    }
    const { number } = lines;
    const code = lines.code();
    if (Number.isNaN(code)) return notACode(columns.count, number, lines.text());
    // A file may end on an empty value only where more was to come.
    if (!lines.next()) return all({ place: number, torn: true });
    if (code === 999) continue;
    if (code === 0 && lines.isWord('EOF')) return all(null);
    columns.add(code, lines.start, lines.end, lines.number);
  }
  const endsSection = columns.lastCode() === 0 && lines.isWord('ENDSEC');
  const lastByte = bytes[bytes.length - 1];
  const endsWhole = lastByte === 10 || lastByte === 13;
  return all({ place: lines.number, torn: !endsWhole && !endsSection });
}

/** Goes through a text line by line; a line ends with LF, with any number of CR and an LF, or with a CR alone. */
class LineReader {
  start = 0;
  end = 0;
  number = 0;
  private readonly bytes: Uint8Array;
  private at = 0;
  /** Behind the last byte that is not blank: blank lines at the very end are no lines. */
  private readonly last: number;

  constructor(bytes: Uint8Array) {
    this.bytes = bytes;
    let last = bytes.length;
    while (last > 0 && isBlank(bytes[last - 1] as number)) last--;
    this.last = last;
  }

  next(): boolean {
    const { bytes } = this;
    if (this.at >= this.last) return false;
    this.start = this.at;
    this.number++;
    let at = this.at;
    while (at < bytes.length && bytes[at] !== 10 && bytes[at] !== 13) at++;
    this.end = at;
    if (bytes[at] === 13) {
      let after = at + 1;
      while (bytes[after] === 13) after++;
      if (bytes[after] === 10) at = after;
    }
    this.at = at + 1;
    return true;
  }

  isBlank(): boolean {
    for (let at = this.start; at < this.end; at++) if (!isBlank(this.bytes[at] as number)) return false;
    return true;
  }

  isWord(word: string): boolean {
    // A short look at the length first: most lines are something else.
    return this.end - this.start >= word.length && this.end - this.start < 64 && this.text() === word;
  }

  text(): string {
    return latin1(this.bytes, this.start, this.end).trim();
  }

  /** A whole number of at most five digits with a sign; NaN for all else. */
  code(): number {
    const { bytes } = this;
    let at = this.start;
    let { end } = this;
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
}

/** The columns of the pairs as they grow; lives for one file. */
class Columns {
  count = 0;
  private codes: Int32Array;
  private starts: Int32Array;
  private ends: Int32Array;
  private places: Int32Array;

  constructor(bytes: number) {
    // A pair takes ten bytes or more as a rule.
    const room = (bytes / 10 + 16) | 0;
    this.codes = new Int32Array(room);
    this.starts = new Int32Array(room);
    this.ends = new Int32Array(room);
    this.places = new Int32Array(room);
  }

  add(code: number, start: number, end: number, place: number): void {
    const at = this.count++;
    if (at === this.codes.length) {
      this.codes = larger(this.codes);
      this.starts = larger(this.starts);
      this.ends = larger(this.ends);
      this.places = larger(this.places);
    }
    this.codes[at] = code;
    this.starts[at] = start;
    this.ends[at] = end;
    this.places[at] = place;
  }

  lastCode(): number | undefined {
    return this.count > 0 ? this.codes[this.count - 1] : undefined;
  }

  pairs(bytes: Uint8Array, damage: readonly Damage[], missingEnd: MissingEnd | null): Pairs {
    const { count, codes, starts, ends, places } = this;
    const text = textBlocks(bytes);
    return { count, codes, starts, ends, places, bytes, text, placeWord: 'line', damage, missingEnd };
  }
}

function larger(column: Int32Array): Int32Array {
  const copy = new Int32Array(2 * column.length);
  copy.set(column);
  return copy;
}

function blankDamage(blanks: number, first: number): readonly Damage[] {
  if (blanks === 0) return [];
  const say = `${blanks} blank ${blanks === 1 ? 'line' : 'lines'} between the groups of the file, the first on line ${first}, skipped.`;
  return [{ weight: 'note', say }];
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
