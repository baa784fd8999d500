import type { ProgramStyle } from '../program-style';
import { programComment } from './program-comment';
import * as portable from '../geometry/portable-math';

/** A line of a program, and which step it came from; null for what stands around the steps. */
export interface ProgramLine {
  readonly text: string;
  readonly step: number | null;
}

/** The lines of a program as they grow: numbers the blocks, spaces their words and puts comments in brackets. */
export class BlockWriter {
  readonly lines: ProgramLine[] = [];
  /** Of the step that is being written. */
  step: number | null = null;
  private number: number | null = null;
  private readonly style: ProgramStyle;

  constructor(style: ProgramStyle) {
    this.style = style;
  }

  /** A line without number, as it is. */
  raw(text: string) {
    this.lines.push({ text, step: this.step });
  }

  comment(text: string) {
    for (const line of programComment(text, this.style.comments)) this.raw(line);
  }

  /** A block of our own words. */
  block(words: readonly string[], comment = '') {
    this.add(words.filter((word) => word !== '').join(this.gap()), this.gap(), comment);
  }

  /** A block of the shop's own text, which stays as it was typed. */
  text(text: string, comment = '') {
    this.add(text, ' ', comment);
  }

  private add(words: string, gap: string, comment: string) {
    const [said, ...more] = programComment(comment, this.style.comments);
    // A comment that needs more than one line: the block carries the last.
    if (more.length > 0) {
      this.raw(said ?? '');
      for (const line of more.slice(0, -1)) this.raw(line);
    }
    const last = more.at(-1) ?? said;
    const text = [...this.nextNumber(), words].join(gap);
    this.raw(last === undefined ? text : `${text} ${last}`);
  }

  private gap(): string {
    return this.style.spaces ? ' ' : '';
  }

  private nextNumber(): string[] {
    const { lineNumbers } = this.style;
    if (!lineNumbers) return [];
    const { first, step, digits, padded } = lineNumbers;
    const next = this.number === null ? first : this.number + step;
    this.number = next < portable.powerOfTen(digits) ? next : first;
    return [`N${String(this.number).padStart(padded ? digits : 1, '0')}`];
  }
}
