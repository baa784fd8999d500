import { done, failed, type Result } from '../problem';
import { textBlocks, type MissingEnd, type Pairs } from './pairs';

/** How every binary DXF begins (DXF reference, "Binary DXF Files"): these words, CR, LF, SUB, NUL. */
export const binaryMark = 'AutoCAD Binary DXF\r\n\u001a\u0000';

/**
 * Splits a binary DXF into group pairs. Codes are two bytes, up to R12 one (255 says that two follow); the size of a
 * value follows from its code. Numbers become the shortest text that reads back the same, so that all that comes
 * after knows one form only.
 */
export function readBinaryPairs(bytes: Uint8Array): Result<Pairs> {
  const reader = new BinaryReader(bytes);
  for (;;) {
    const place = reader.at + 1;
    if (reader.at >= bytes.length) return done(reader.pairs({ place, torn: false }));
    const code = reader.code();
    if (code === null) return done(reader.pairs({ place, torn: true }));
    const kind = kindOf(code);
    if (kind === null) {
      return failed(
        'drawing-damaged',
        `A group code was expected, found ${code}`,
        `byte ${place}`,
        'The binary DXF is damaged here; have it saved as ASCII DXF and sent again.',
      );
    }
    const text = reader.value(kind);
    if (text === null) return done(reader.pairs({ place, torn: true }));
    if (code === 0 && text === 'EOF') return done(reader.pairs(null));
    if (code !== 999) reader.add(code, text, place);
  }
}

type Kind = 'text' | 'double' | 'short' | 'long' | 'huge' | 'byte' | 'chunk';

/** What stands under a code (DXF reference, "Group Codes in Numerical Order"); null where no group has it. */
function kindOf(code: number): Kind | null {
  for (const [from, to, kind] of kinds) if (code >= from && code <= to) return kind;
  return null;
}

const kinds: readonly (readonly [from: number, to: number, kind: Kind])[] = [
  [0, 9, 'text'],
  [10, 59, 'double'],
  [60, 79, 'short'],
  [90, 99, 'long'],
  [100, 105, 'text'],
  [110, 149, 'double'],
  [160, 169, 'huge'],
  [170, 179, 'short'],
  [210, 239, 'double'],
  [270, 289, 'short'],
  [290, 299, 'byte'],
  [300, 309, 'text'],
  [310, 319, 'chunk'],
  [320, 369, 'text'],
  [370, 389, 'short'],
  [390, 399, 'text'],
  [400, 409, 'short'],
  [410, 419, 'text'],
  [420, 429, 'long'],
  [430, 439, 'text'],
  [440, 459, 'long'],
  [460, 469, 'double'],
  [470, 481, 'text'],
  [999, 999, 'text'],
  [1000, 1003, 'text'],
  [1004, 1004, 'chunk'],
  [1005, 1009, 'text'],
  [1010, 1059, 'double'],
  [1060, 1070, 'short'],
  [1071, 1071, 'long'],
];

/** Walks through a binary DXF and fills the columns; lives for one file. */
class BinaryReader {
  at = binaryMark.length;
  private readonly bytes: Uint8Array;
  private readonly view: DataView;
  private readonly wide: boolean;
  private out = new Uint8Array(4096);
  private used = 0;
  private readonly codes: number[] = [];
  private readonly starts: number[] = [];
  private readonly ends: number[] = [];
  private readonly places: number[] = [];

  constructor(bytes: Uint8Array) {
    this.bytes = bytes;
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    // The first group is 0 SECTION: with codes of two bytes a second 0 stands before the S.
    this.wide = bytes[this.at + 1] === 0;
  }

  code(): number | null {
    if (this.wide) return this.has(2) ? this.view.getInt16(this.skip(2), true) : null;
    const short = this.bytes[this.skip(1)] as number;
    if (short !== 255) return short;
    return this.has(2) ? this.view.getInt16(this.skip(2), true) : null;
  }

  value(kind: Kind): string | null {
    switch (kind) {
      case 'text':
        return this.text();
      case 'double':
        return this.has(8) ? String(this.view.getFloat64(this.skip(8), true)) : null;
      case 'short':
        return this.has(2) ? String(this.view.getInt16(this.skip(2), true)) : null;
      case 'long':
        return this.has(4) ? String(this.view.getInt32(this.skip(4), true)) : null;
      case 'huge':
        return this.has(8) ? String(this.view.getBigInt64(this.skip(8), true)) : null;
      case 'byte':
        return this.has(1) ? String(this.bytes[this.skip(1)]) : null;
      case 'chunk': {
        // Pictures and the like: passed over.
        const length = this.bytes[this.skip(1)] ?? 0;
        if (!this.has(length)) return null;
        this.skip(length);
        return '';
      }
    }
  }

  add(code: number, text: string, place: number): void {
    if (this.used + text.length > this.out.length) {
      const larger = new Uint8Array(2 * (this.used + text.length));
      larger.set(this.out);
      this.out = larger;
    }
    this.codes.push(code);
    this.starts.push(this.used);
    for (let i = 0; i < text.length; i++) this.out[this.used++] = text.charCodeAt(i);
    this.ends.push(this.used);
    this.places.push(place);
  }

  pairs(missingEnd: MissingEnd | null): Pairs {
    return {
      count: this.codes.length,
      codes: Int32Array.from(this.codes),
      bytes: this.out,
      text: textBlocks(this.out),
      starts: Int32Array.from(this.starts),
      ends: Int32Array.from(this.ends),
      places: Int32Array.from(this.places),
      placeWord: 'byte',
      damage: [],
      missingEnd,
    };
  }

  private has(count: number): boolean {
    return this.at + count <= this.bytes.length;
  }

  private skip(count: number): number {
    this.at += count;
    return this.at - count;
  }

  /** Up to the next NUL. */
  private text(): string | null {
    const end = this.bytes.indexOf(0, this.at);
    if (end < 0) return null;
    let text = '';
    for (let i = this.at; i < end; i++) text += String.fromCharCode(this.bytes[i] as number);
    this.at = end + 1;
    return text;
  }
}
