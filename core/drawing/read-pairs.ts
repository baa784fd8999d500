import { done, failed, type Result } from '../problem';
import type { Damage } from './raw-drawing';

/** The group pairs of a DXF in columns: code, value (bytes as Latin-1, untrimmed) and the line the value stands on. */
export interface Pairs {
  readonly codes: readonly number[];
  readonly values: readonly string[];
  readonly lines: readonly number[];
  readonly damage: readonly Damage[];
  /** What shows that the end of the file is missing; null where it ends with EOF. */
  readonly missingEnd: MissingEnd | null;
}

export interface MissingEnd {
  readonly line: number;
  /** True where the last pair itself is torn, false where only the EOF after it is missing. */
  readonly torn: boolean;
}

/**
 * Splits a DXF's text into group pairs (DXF reference, "Group codes": a line with a code, a line with a value).
 * Takes CR, LF and CRLF, padded codes, 999 comments (dropped), blank lines where a code belongs (skipped, noted) and
 * text after EOF (ignored). A code line that is no number is refused with its line.
 */
export function readPairs(text: string): Result<Pairs> {
  const lines = text.split(/\r*\n|\r/);
  const endsWhole = /[\r\n]$/.test(text);
  while (lines.length > 0 && (lines[lines.length - 1] as string).trim() === '') lines.pop();
  const codes: number[] = [];
  const values: string[] = [];
  const at: number[] = [];
  let blanks = 0;
  let firstBlank = 0;
  for (let i = 0; i < lines.length; i += 2) {
    while (i < lines.length && (lines[i] as string).trim() === '') {
      if (blanks++ === 0) firstBlank = i + 1;
      i++;
    }
    const codeText = (lines[i] as string).trim();
    if (!/^[-+]?\d{1,5}$/.test(codeText)) return notACode(codes.length, i + 1, codeText);
    const code = Number(codeText);
    const value = lines[i + 1];
    if (value === undefined) {
      // A file may end on an empty value only where more was to come.
      return done(pairsOf(codes, values, at, blanks, firstBlank, { line: i + 1, torn: true }));
    }
    if (code === 999) continue;
    if (code === 0 && value.trim() === 'EOF')
      return done(pairsOf(codes, values, at, blanks, firstBlank, null));
    codes.push(code);
    values.push(value);
    at.push(i + 2);
  }
  const last = values[values.length - 1]?.trim();
  const torn = !endsWhole && !(codes[codes.length - 1] === 0 && last === 'ENDSEC');
  return done(pairsOf(codes, values, at, blanks, firstBlank, { line: lines.length, torn }));
}

function pairsOf(
  codes: number[],
  values: string[],
  lines: number[],
  blanks: number,
  firstBlank: number,
  missingEnd: MissingEnd | null,
): Pairs {
  const damage: Damage[] = [];
  if (blanks > 0) {
    const say = `${blanks} blank ${blanks === 1 ? 'line' : 'lines'} between the groups of the file, the first on line ${firstBlank}, skipped.`;
    damage.push({ weight: 'note', say });
  }
  return { codes, values, lines, damage, missingEnd };
}

function notACode(pairsBefore: number, line: number, found: string) {
  const shown = found.length > 30 ? `${found.slice(0, 30)}…` : found;
  if (pairsBefore === 0) {
    return failed(
      'drawing-not-dxf',
      'The file is not a DXF drawing: it does not begin with a group code',
      `line ${line}: "${printable(shown)}"`,
      'Choose a DXF file, or save the drawing as ASCII DXF in the program it was made with.',
    );
  }
  return failed(
    'drawing-damaged',
    `A group code was expected, found "${printable(shown)}"`,
    `line ${line}`,
    'The file is damaged here; have it saved as ASCII DXF and sent again.',
  );
}

const printable = (text: string): string => text.replace(/[\u0000-\u001f\u007f-\u009f]/g, '·');
