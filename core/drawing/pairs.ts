import type { Damage } from './raw-drawing';

/**
 * The group pairs of a DXF in columns: nothing is copied out of the file until it is asked for, so that a file of
 * millions of groups costs sixteen bytes a group.
 */
export interface Pairs {
  readonly count: number;
  readonly codes: Int32Array;
  /** The bytes the values stand in; value i is `starts[i]` to `ends[i]`, not trimmed. */
  readonly bytes: Uint8Array;
  /** A range of the bytes as text (see textBlocks). */
  readonly text: (start: number, end: number) => string;
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** Where each value stands in the file: its line, or in a binary file its byte. */
  readonly places: Int32Array;
  readonly placeWord: 'line' | 'byte';
  readonly damage: readonly Damage[];
  /** What shows that the end of the file is missing; null where it ends with EOF. */
  readonly missingEnd: MissingEnd | null;
}

export interface MissingEnd {
  readonly place: number;
  /** True where the last pair itself is torn, false where only the EOF after it is missing. */
  readonly torn: boolean;
}

/** "line 12", or "byte 340" of a binary file. */
export const placeOf = (pairs: Pairs, i: number): string => `${pairs.placeWord} ${pairs.places[i] ?? 0}`;

/** A value as text, one character a byte (Latin-1), trimmed. Names are decoded by decodeName. */
export function textAt(pairs: Pairs, i: number): string {
  const { bytes } = pairs;
  let start = pairs.starts[i] as number;
  let end = pairs.ends[i] as number;
  while (start < end && isBlank(bytes[start] as number)) start++;
  while (end > start && isBlank(bytes[end - 1] as number)) end--;
  return pairs.text(start, end);
}

/**
 * Ranges of bytes as text, one character a byte: decoded by the block, since values are mostly read one after another
 * and a call for each would cost more than all else in reading.
 */
export function textBlocks(bytes: Uint8Array): (start: number, end: number) => string {
  let at = -1;
  let block = '';
  return (start, end) => {
    const number = Math.floor(start / blockSize);
    const from = number * blockSize;
    if (end > from + blockSize) return latin1(bytes, start, end);
    if (number !== at) {
      at = number;
      block = latin1(bytes, from, Math.min(bytes.length, from + blockSize));
    }
    return block.slice(start - from, end - from);
  };
}

const blockSize = 8192;

/** Bytes as text, one character a byte. */
export function latin1(bytes: Uint8Array, start: number, end: number): string {
  // In slices: a call takes only so many arguments. Applied, not spread, which costs ten times as much.
  const slice = 8192;
  const part = (from: number, to: number): string =>
    Reflect.apply(String.fromCharCode, undefined, bytes.subarray(from, to)) as string;
  if (end - start <= slice) return part(start, end);
  const parts: string[] = [];
  for (let i = start; i < end; i += slice) parts.push(part(i, Math.min(end, i + slice)));
  return parts.join('');
}

/** Blank, tab and the other signs that stand for nothing at the ends of a line. */
export const isBlank = (byte: number): boolean => byte === 32 || (byte >= 9 && byte <= 13);

/** The first pair with a code in a range; −1 where there is none. */
export function findCode(pairs: Pairs, code: number, from: number, to: number): number {
  for (let i = from; i < to; i++) if (pairs.codes[i] === code) return i;
  return -1;
}

/** The value of the first pair with a code in a range; empty where there is none. */
export function textOf(pairs: Pairs, code: number, from: number, to: number): string {
  const at = findCode(pairs, code, from, to);
  return at < 0 ? '' : textAt(pairs, at);
}

/**
 * A value as a number: a decimal point, an exponent with e, nothing else; NaN for all other text. Up to fifteen
 * digits are read straight from the bytes (a whole number times or over a power of ten up to 10²² is rounded once),
 * longer ones by the language's own conversion.
 */
export function numberAt(pairs: Pairs, i: number): number {
  const { bytes } = pairs;
  let at = pairs.starts[i] as number;
  let end = pairs.ends[i] as number;
  while (at < end && isBlank(bytes[at] as number)) at++;
  while (end > at && isBlank(bytes[end - 1] as number)) end--;
  const start = at;
  const sign = bytes[at] === minus ? -1 : 1;
  if (at < end && (bytes[at] === minus || bytes[at] === plus)) at++;
  let whole = 0;
  let digits = 0;
  let power = 0;
  const firstDigit = at;
  for (; at < end && isDigit(bytes[at] as number); at++) {
    whole = whole * 10 + (bytes[at] as number) - zero;
    if (whole > 0) digits++;
  }
  let seen = at - firstDigit;
  if (at < end && bytes[at] === point) {
    const firstDecimal = ++at;
    for (; at < end && isDigit(bytes[at] as number); at++) {
      whole = whole * 10 + (bytes[at] as number) - zero;
      if (whole > 0) digits++;
    }
    seen += at - firstDecimal;
    power = firstDecimal - at;
  }
  if (seen === 0) return Number.NaN;
  if (at < end) {
    const exponent = exponentAt(bytes, at, end);
    if (Number.isNaN(exponent)) return Number.NaN;
    power += exponent;
  }
  if (digits <= 15 && power >= -22 && power <= 22)
    return sign * (power < 0 ? whole / (tens[-power] as number) : whole * (tens[power] as number));
  return Number(pairs.text(start, end));
}

/** A value as a whole number of at most ten digits; NaN for all other text. */
export function wholeAt(pairs: Pairs, i: number): number {
  const text = textAt(pairs, i);
  return /^[-+]?\d{1,10}$/.test(text) ? Number(text) : Number.NaN;
}

function exponentAt(bytes: Uint8Array, at: number, end: number): number {
  if (((bytes[at] as number) | 32) !== letterE) return Number.NaN;
  let i = at + 1;
  const sign = bytes[i] === minus ? -1 : 1;
  if (i < end && (bytes[i] === minus || bytes[i] === plus)) i++;
  if (i >= end || end - i > 3) return Number.NaN;
  let value = 0;
  for (; i < end; i++) {
    if (!isDigit(bytes[i] as number)) return Number.NaN;
    value = value * 10 + (bytes[i] as number) - zero;
  }
  return sign * value;
}

const isDigit = (byte: number): boolean => byte >= 48 && byte <= 57;
const zero = 48;
const minus = 45;
const plus = 43;
const point = 46;
const letterE = 101;
const tens = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
