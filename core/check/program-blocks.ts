import { done, failed, type Result } from '../problem';

/** A letter with its number, e.g.. */
export interface ProgramWord {
  readonly letter: string;
  readonly value: number;
  /** Digits after the decimal point; null where no point is written. */
  readonly decimals: number | null;
}

/** One line of a program that says something. */
export interface ProgramBlock {
  /** Counted from 1, as editors do. */
  readonly line: number;
  readonly words: readonly ProgramWord[];
  /** What stands in brackets or after a semicolon. */
  readonly comments: readonly string[];
}

/**
 * A program's text as blocks of words (ISO 6983-1, clause on the format; comments also after a semicolon as in
 * RS274/NGC). `%` begins and ends the program: what stands before the first or after the second is no part of it.
 * Anything that is not a word (parameters, expressions, blocks that a switch may skip) is a problem with its line,
 * since nobody could say where the wire goes. `ownWords` are texts of a shop's own that are passed over as they
 * stand.
 */
export function programBlocks(
  text: string,
  ownWords: readonly string[] = [],
): Result<readonly ProgramBlock[]> {
  const lines = text.split(/\r\n|\r|\n/);
  const marks = lines.flatMap((line, index) => (line.trim() === '%' ? [index] : []));
  const first = (marks[0] ?? -1) + 1;
  const end = marks[1] ?? lines.length;
  const blocks: ProgramBlock[] = [];
  for (let index = first; index < end; index++) {
    const block = readBlock(lines[index] ?? '', index + 1, ownWords);
    if (!block.ok) return block;
    if (block.value.words.length > 0 || block.value.comments.length > 0) blocks.push(block.value);
  }
  return done(blocks);
}

const wordAt = /([A-Z])\s*([+-]?(?:\d+(?:\.(\d*))?|\.(\d+)))/y;

function readBlock(line: string, number: number, ownWords: readonly string[]): Result<ProgramBlock> {
  const comments: string[] = [];
  const bare = line
    .replace(/\(([^()]*)\)|;(.*)$/g, (_, bracketed: string | undefined, rest: string | undefined) => {
      comments.push((bracketed ?? rest ?? '').trim());
      return ' ';
    })
    .toUpperCase();
  const spoken = ownWords.reduce((left, own) => withoutWord(left, own.trim().toUpperCase()), bare);
  const words: ProgramWord[] = [];
  for (let at = skipSpace(spoken, 0); at < spoken.length; at = skipSpace(spoken, wordAt.lastIndex)) {
    wordAt.lastIndex = at;
    const [, letter, value, digits, onlyDigits] = wordAt.exec(spoken) ?? [];
    if (letter === undefined || value === undefined) return notAWord(spoken.slice(at), number);
    words.push({ letter, value: Number(value), decimals: (digits ?? onlyDigits)?.length ?? null });
  }
  return done({ line: number, words, comments });
}

/** Own words stand for themselves: between blanks or the line's ends, so that M6 is not found in M60. */
function withoutWord(line: string, own: string): string {
  if (own === '') return line;
  return ` ${line} `.split(` ${own} `).join('  ');
}

function skipSpace(text: string, from: number): number {
  let at = from;
  while (at < text.length && /\s/.test(text[at] ?? '')) at++;
  return at;
}

const notAWord = (rest: string, line: number) =>
  failed(
    'program-word',
    `"${rest.slice(0, 20).trim()}" is not a word of a program`,
    `line ${line}`,
    'Write letters with plain numbers only; parameters, formulas and blocks to skip cannot be proved.',
  );
