import type { Point } from '../geometry/contour';
import { mmPerInch, type DisplayUnit } from '../units';
import { programComment } from './program-comment';
import type { ProgramStep } from './program-steps';
import { roundArc } from './round-arc';

/**
 * Steps as blocks of ISO 6983-1, one a line, ended by M30. Only words of the standard: `%`, comments in brackets,
 * G00–G03, G17, G40–G42, G70/G71, G90, F, D, N, M00, M30, and I, J from the arc's start to its centre. Numbers carry
 * a decimal point. `header` is one comment a line.
 */
export function formatProgram(
  steps: readonly ProgramStep[],
  options: { readonly unit: DisplayUnit; readonly header: readonly string[]; readonly draft: string | null },
): string {
  const blocks = new Blocks(options.unit);
  blocks.add(options.unit === 'inch' ? 'G70' : 'G71');
  blocks.add('G17 G40 G90');
  if (options.draft !== null) blocks.add('M00', options.draft);
  for (const step of steps) blocks.step(step);
  blocks.add('M30');
  return ['%', ...options.header.flatMap(programComment), ...blocks.lines, ''].join('\n');
}

/** RS274/NGC reads line numbers up to this; a longer program starts again at 1, which is allowed. */
const lastNumber = 99_999;

/**
 * A tenth of the finest steps that machines make (0.1 µm, 0.00001 in; common practice). With that step itself, an
 * inside arc hardly larger than the offset could be rounded below it, and the control would refuse the contour.
 */
const decimals: Record<DisplayUnit, number> = { mm: 5, inch: 6 };

class Blocks {
  readonly lines: string[] = [];
  private at: Point = { x: Number.NaN, y: Number.NaN };
  private number = 0;
  /** Words that ride on the next feed move. */
  private before = '';
  private after = '';
  private readonly unit: DisplayUnit;

  constructor(unit: DisplayUnit) {
    this.unit = unit;
  }

  add(words: string, comment = '') {
    this.number = (this.number % lastNumber) + 1;
    const said = comment === '' ? '' : ` ${programComment(comment).join(' ')}`;
    this.lines.push(`N${this.number} ${words}${said}`);
  }

  step(step: ProgramStep) {
    switch (step.kind) {
      case 'thread': {
        this.at = this.onGrid(step.at);
        this.add(`G00 ${this.point('X', 'Y', this.at)}`);
        const size = step.hole ? `start hole ${this.said(step.hole.diameter)}` : 'no start hole fits here';
        this.add('M00', `thread the wire - ${size}`);
        return;
      }
      case 'pass': {
        const name = passName(step.pass);
        this.lines.push(...programComment(step.onTab ? `${name}, tab` : name));
        this.after = ` F${this.decimal(step.feed, 2)}`;
        return;
      }
      case 'compensate':
        this.before = step.side === 'left' ? 'G41 ' : 'G42 ';
        this.after += ` D${step.offsetNumber}`;
        return;
      case 'stop compensating':
        this.before = 'G40 ';
        return;
      case 'stop':
        this.add('M00', step.say);
        return;
      case 'move':
        this.move(step.to, step.bulge);
        return;
    }
  }

  private move(exact: Point, bulge: number) {
    const to = this.onGrid(exact);
    if (to.x === this.at.x && to.y === this.at.y) return;
    const centre = roundArc(this.at, to, bulge);
    const way = centre === null ? 'G01' : bulge > 0 ? 'G03' : 'G02';
    const about = centre === null ? '' : ` ${this.point('I', 'J', centre)}`;
    this.add(`${this.before}${way} ${this.point('X', 'Y', to)}${about}${this.after}`);
    this.before = '';
    this.after = '';
    this.at = to;
  }

  /** Whole steps of the number format, so that every later sum of coordinates is exact. */
  private onGrid(point: Point): Point {
    const scale = 10 ** decimals[this.unit] / this.perUnit();
    return { x: Math.round(point.x * scale), y: Math.round(point.y * scale) };
  }

  private point(first: string, second: string, grid: Point): string {
    return `${first}${this.fromGrid(grid.x)} ${second}${this.fromGrid(grid.y)}`;
  }

  /** Exact decimal text of a whole number of steps; no "-0.0000". */
  private fromGrid(steps: number): string {
    const digits = decimals[this.unit];
    return ((steps === 0 ? 0 : steps) / 10 ** digits).toFixed(digits);
  }

  private decimal(mm: number, digitsInMm: number): string {
    // An inch step is 25 times as coarse: two more decimals keep a slow feed from becoming zero.
    return this.unit === 'inch' ? (mm / mmPerInch).toFixed(digitsInMm + 2) : mm.toFixed(digitsInMm);
  }

  private said(mm: number): string {
    return `${this.decimal(mm, 2)} ${this.unit === 'inch' ? 'in' : 'mm'}`;
  }

  private perUnit(): number {
    return this.unit === 'inch' ? mmPerInch : 1;
  }
}

/** "rough", "skim 1", … */
export const passName = (pass: number): string => (pass === 0 ? 'rough' : `skim ${pass}`);
