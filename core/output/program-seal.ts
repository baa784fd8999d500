import { fingerprint } from '../fingerprint';
import type { ProgramStyle } from '../program-style';
import { programComment } from './program-comment';

/** What a released program was made from: fingerprints of the job file and of the drawing's bytes. */
export interface Seal {
  readonly job: string;
  readonly drawing: string;
}

/** A program with its seal taken off, and what the seal says. */
export interface SealedText extends Seal {
  /** The program as it was before it was sealed, if nobody has changed it since; its lines end in LF. */
  readonly program: string;
  /** Whether the rest of the text is what was sealed. */
  readonly isWhole: boolean;
}

/**
 * A released program with its seal: comments behind the last block that name job, drawing and the program itself by
 * their fingerprints. There they move no line that a finding or the replay points to.
 */
export function sealProgram(
  text: string,
  seal: Seal,
  style: Pick<ProgramStyle, 'comments' | 'after' | 'lineEnd'>,
): string {
  const end = style.lineEnd === 'CRLF' ? '\r\n' : '\n';
  const lines = text.split(end);
  const said = [
    sealWords,
    `job ${seal.job}`,
    `drawing ${seal.drawing}`,
    `program ${fingerprintOf(unixLines(text), seal)}`,
  ].flatMap((line) => programComment(line, style.comments));
  // Behind the last line end the split leaves an empty one.
  lines.splice(lines.length - 1 - style.after.length, 0, ...said);
  return lines.join(end);
}

/** Takes a program's seal off; null where it has none, or one that is not whole. */
export function openSeal(text: string): SealedText | null {
  const lines = unixLines(text).split('\n');
  const first = lines.findLastIndex((line) => bare(line).toLowerCase().startsWith(sealWords.toLowerCase()));
  if (first < 0) return null;
  // A control with short comments has a fingerprint over two lines.
  let said = '';
  for (let count = 1; count <= mostSealLines && first + count <= lines.length; count++) {
    said += bare(lines[first + count - 1] ?? '').replaceAll(' ', '');
    const found = sealForm.exec(said);
    if (!found) continue;
    const [, job = '', drawing = '', sealed = ''] = found.map((part) => part.toLowerCase());
    const program = [...lines.slice(0, first), ...lines.slice(first + count)].join('\n');
    return { job, drawing, program, isWhole: fingerprintOf(program, { job, drawing }) === sealed };
  }
  return null;
}

const sealWords = 'Diewright seal';
const sealForm = /job([0-9a-f]{32})drawing([0-9a-f]{32})program([0-9a-f]{32})$/i;
/** Four lines, each over at most three where comments are as short as a style may have them. */
const mostSealLines = 12;

/** Of a program and of what its seal says, so that neither can be changed alone. */
const fingerprintOf = (program: string, { job, drawing }: Seal): string =>
  fingerprint(`${job} ${drawing}\n${program}`);

/** A transfer to a control may change the ends of lines; nothing that a program says. */
const unixLines = (text: string): string => text.replaceAll('\r\n', '\n');

/** A comment line without the signs of a comment. */
const bare = (line: string): string => line.trim().replace(/^[(;]\s*|\)$/g, '');
