import type { Point } from '../geometry/contour';
import { decimalsOf } from '../last-decimal';
import type { ProgramStyle } from '../program-style';
import { mmPerInch, type DisplayUnit } from '../units';
import { BlockWriter, type ProgramLine } from './block-writer';
import { bulgeOver } from './bulge-over';
import { feedSteps } from './feed-steps';
import { numberText } from './number-text';
import { offsetWord } from './offset-word';
import type { ProgramStep } from './program-steps';
import { radiusWord } from './radius-word';
import { roundArc } from './round-arc';
import * as portable from '../geometry/portable-math';

export interface ProgramOptions {
  readonly unit: DisplayUnit;
  /** Comments at the head of the program, one a line. */
  readonly header: readonly string[];
  /** Why the program must not run yet: it then stops before the first move; null where it may. */
  readonly draft: string | null;
  readonly style: ProgramStyle;
}

/** Steps as the text of a program in a style; the neutral style has words of ISO 6983-1 only. */
export function formatProgram(steps: readonly ProgramStep[], options: ProgramOptions): string {
  const end = options.style.lineEnd === 'CRLF' ? '\r\n' : '\n';
  return programLines(steps, options)
    .map(({ text }) => `${text}${end}`)
    .join('');
}

/** The same line by line, each with the step that it came from. */
export function programLines(
  steps: readonly ProgramStep[],
  { unit, header, draft, style }: ProgramOptions,
): readonly ProgramLine[] {
  const program = new Program(style, unit);
  program.begin(header, draft);
  steps.forEach((step, index) => program.write(step, index));
  program.end();
  return program.out.lines;
}

class Program {
  readonly out: BlockWriter;
  private readonly style: ProgramStyle;
  private readonly unit: DisplayUnit;
  private at: Point = nowhere;
  /** The same before rounding, mm. */
  private exactAt: Point = nowhere;
  /** U and V as last said, in steps. */
  private lean: Point = upright;
  /** The motion word of the block before; empty where the next block must say its own and both coordinates. */
  private motion = '';
  /** Words that ride on the next feed move. */
  private before = '';
  private after: string[] = [];

  constructor(style: ProgramStyle, unit: DisplayUnit) {
    this.out = new BlockWriter(style);
    this.style = style;
    this.unit = unit;
  }

  begin(header: readonly string[], draft: string | null) {
    for (const line of this.style.before) this.out.raw(line);
    for (const line of header) this.out.comment(line);
    if (draft !== null) this.out.block([this.word('M', 0)], draft);
    for (const block of this.style.start) {
      this.out.text(block.replaceAll('{unit}', this.unitWord()));
    }
  }

  end() {
    this.out.step = null;
    for (const block of this.style.end) this.out.text(block);
    for (const line of this.style.after) this.out.raw(line);
  }

  write(step: ProgramStep, index: number) {
    this.out.step = index;
    switch (step.kind) {
      case 'thread': {
        this.at = this.onGrid(step.at);
        this.exactAt = step.at;
        const lean = this.onGrid(step.lean ?? upright);
        const leans = !isSame(lean, upright) || !isSame(this.lean, upright);
        this.lean = lean;
        this.out.block([
          this.word('G', 0),
          ...this.point('X', 'Y', this.at),
          ...(leans ? this.point('U', 'V', lean) : []),
        ]);
        const size = step.hole ? `start hole ${this.said(step.hole.diameter)}` : 'no start hole fits here';
        this.halt(this.style.thread, `thread the wire - ${size}`);
        return;
      }
      case 'pass': {
        this.out.comment(step.onTab ? `${step.name}, tab` : step.name);
        this.after = this.feed(step.feed);
        return;
      }
      case 'compensate': {
        const { offsets } = this.style;
        this.before = this.word('G', step.side === 'left' ? 41 : 42);
        this.after = [...this.after, offsetWord(offsets, step.offsetNumber)];
        return;
      }
      case 'stop compensating':
        this.before = this.word('G', 40);
        return;
      case 'cut wire':
        this.halt(this.style.cutWire, step.say);
        return;
      case 'stop':
        this.out.block([this.word('M', 0)], step.say);
        this.motion = '';
        return;
      case 'move':
        this.move(step);
        return;
    }
  }

  /** Own blocks at which the control may wait: whoever starts again there needs all words of the next move. */
  private halt(blocks: readonly string[], comment: string) {
    const [first, ...more] = blocks;
    if (first === undefined) this.out.comment(comment);
    else this.out.text(first, comment);
    for (const block of more) this.out.text(block);
    this.motion = '';
  }

  private move({ to: exact, bulge: exactBulge, lean: exactLean }: Extract<ProgramStep, { kind: 'move' }>) {
    const to = this.onGrid(exact);
    const lean = this.onGrid(exactLean ?? upright);
    const { at, style, exactAt } = this;
    this.exactAt = exact;
    if (isSame(to, at) && isSame(lean, this.lean)) return;
    const chord = distance(exactAt, exact) * this.perMm();
    const bulge = bulgeOver(exactBulge, chord, distance(at, to));
    const centre = roundArc(at, to, bulge);
    const way = this.word('G', centre === null ? 1 : bulge > 0 ? 3 : 2);
    const isAfresh = this.motion === '' || this.before !== '';
    const says = isAfresh || style.leaveOut === 'nothing' || way !== this.motion;
    const sparing = !isAfresh && style.leaveOut === 'motion words and coordinates';
    // A program in which the wire never leans has no U and V; one that leans says when it stands upright again.
    const leans = exactLean !== undefined || !isSame(this.lean, upright);
    this.out.block([
      this.before,
      says ? way : '',
      ...this.words('X', 'Y', to, sparing ? at : null),
      ...(leans ? this.words('U', 'V', lean, sparing ? this.lean : null) : []),
      ...(centre === null ? [] : this.arc({ x: to.x - at.x, y: to.y - at.y }, bulge, centre)),
      ...this.after,
    ]);
    this.motion = way;
    this.before = '';
    this.after = [];
    this.at = to;
    this.lean = lean;
  }

  /** Both words, or only the one that is not as before. */
  private words(first: string, second: string, grid: Point, before: Point | null): readonly string[] {
    const [a = '', b = ''] = this.point(first, second, grid);
    return [grid.x === before?.x ? '' : a, grid.y === before?.y ? '' : b];
  }

  private arc(to: Point, bulge: number, centre: Point): readonly string[] {
    const radius = this.style.arcs === 'radius' ? radiusWord(to, bulge) : null;
    return radius === null ? this.point('I', 'J', centre) : [`R${this.coordinate(radius)}`];
  }

  private feed(mmPerMinute: number): string[] {
    if (!this.style.feed) return [];
    const { inchDecimals, mmDecimals } = this.style.feed;
    const decimals = this.unit === 'inch' ? inchDecimals : mmDecimals;
    return [`F${numberText(feedSteps(mmPerMinute, this.unit, decimals), decimals, this.style.numbers)}`];
  }

  private word(letter: 'G' | 'M', number: number): string {
    return `${letter}${String(number).padStart(this.style.twoDigitWords ? 2 : 1, '0')}`;
  }

  private unitWord(): string {
    const [inch, mm] = this.style.unitWords === 'G70 and G71' ? [70, 71] : [20, 21];
    return this.word('G', this.unit === 'inch' ? inch : mm);
  }

  /** Whole steps of the number format, so that every later sum of coordinates is exact. */
  private onGrid(point: Point): Point {
    const scale = this.perMm();
    return { x: Math.round(point.x * scale), y: Math.round(point.y * scale) };
  }

  private point(first: string, second: string, grid: Point): readonly string[] {
    return [`${first}${this.coordinate(grid.x)}`, `${second}${this.coordinate(grid.y)}`];
  }

  private coordinate(steps: number): string {
    return numberText(steps, this.decimals(), this.style.numbers);
  }

  private said(mm: number): string {
    return this.unit === 'inch' ? `${(mm / mmPerInch).toFixed(4)} in` : `${mm.toFixed(2)} mm`;
  }

  private decimals(): number {
    return decimalsOf(this.style, this.unit);
  }

  /** Steps of the number format. */
  private perMm(): number {
    return portable.powerOfTen(this.decimals()) / this.perUnit();
  }

  private perUnit(): number {
    return this.unit === 'inch' ? mmPerInch : 1;
  }
}

const nowhere: Point = { x: Number.NaN, y: Number.NaN };

const upright: Point = { x: 0, y: 0 };

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

const isSame = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;
