import type { Point } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import { done, failed, type Result } from '../problem';
import { mmPerInch } from '../units';
import { arcAboutCentre, arcOfRadius } from './arc-about';
import { preparationOf, type Preparation } from './preparatory-words';
import { programBlocks, type ProgramBlock, type ProgramWord } from './program-blocks';
import { plainDialect, type ProgramDialect } from './program-dialect';
import type { AxisPlace, OffsetSide, ProgramMove, ProgramPause, ProgramReading } from './program-reading';
import * as portable from '../geometry/portable-math';

/**
 * What a program's text tells a machine to do, read without any of the code that writes programs: ISO 6983-1 in the
 * plane of X and Y with the secondary axes U and V, and what RS274/NGC adds (G20/G21, R, comments after a semicolon).
 * Words hold until they are said anew, as the standard has it. What leaves a doubt about the path is a problem with
 * its line.
 */
export function readProgram(text: string, dialect: ProgramDialect = plainDialect): Result<ProgramReading> {
  const blocks = programBlocks(text, dialect.ownWords);
  if (!blocks.ok) return blocks;
  const reader = new Reader(dialect);
  for (const block of blocks.value) {
    const problem = reader.read(block);
    if (problem) return problem;
  }
  return reader.reading(text.split(/\r\n|\r|\n/).length);
}

type Trouble = ReturnType<typeof failed>;
type Axis = keyof AxisPlace;

const axes: readonly (readonly [Axis, string])[] = [
  ['x', 'X'],
  ['y', 'Y'],
  ['u', 'U'],
  ['v', 'V'],
];

/** Words that a block may carry and that move nothing. */
const silent = new Set(['N', 'O', 'S', 'T', 'H', 'E', 'P', 'Q', 'L', 'D', 'F', 'G', 'M']);

/** As a comment says it: D1 = 0.1650 MM. */
const statedOffset = /\b([DH])\s*0*(\d+)\s*=\s*(\d*\.?\d+)\s*MM\b/gi;

class Reader {
  private readonly moves: ProgramMove[] = [];
  private readonly pauses: ProgramPause[] = [];
  private readonly stated = new Map<number, number>();
  private unit: 'mm' | 'inch' | null = null;
  /** Whether numbers are distances from where the wire is; null until the program says. */
  private incremental: boolean | null = null;
  private motion: Preparation['motion'] = null;
  private side: OffsetSide = 'off';
  private register: number | null = null;
  private feed: number | null = null;
  private zero: number | null = null;
  private decimals = 0;
  private feedDecimals = 0;
  private ended = false;
  private at: AxisPlace | null = null;
  /** How far G92 has moved the zero since the first one. */
  private shift: AxisPlace = { x: 0, y: 0, u: 0, v: 0 };
  private readonly dialect: ProgramDialect;

  constructor(dialect: ProgramDialect) {
    this.dialect = dialect;
  }

  /** Takes in one block; the trouble with it, if any. */
  read(block: ProgramBlock): Trouble | null {
    this.noteRegisters(block);
    if (block.words.length === 0) return null;
    if (this.ended) return trouble(block, 'program-goes-on', 'The program goes on after its end');
    const prepared = preparationOf(block);
    if (!prepared.ok) return prepared;
    return this.setUp(block, prepared.value) ?? this.go(block, prepared.value) ?? this.pause(block);
  }

  reading(lines: number): Result<ProgramReading> {
    const { unit, moves, pauses, stated } = this;
    if (!this.ended) return failed('program-no-end', 'The program has no end', '', 'End it with M30 or M02.');
    if (unit === null) {
      return failed('program-no-unit', 'The program does not say its unit', '', 'Begin it with G71 or G70.');
    }
    const step = this.mm(1 / portable.powerOfTen(this.decimals));
    return done({
      unit,
      step,
      feedStep: this.mm(1 / portable.powerOfTen(this.feedDecimals)),
      moves,
      pauses,
      stated,
      lines,
    });
  }

  private noteRegisters({ comments }: ProgramBlock): void {
    for (const [, letter, number, mm] of comments.join(' ').matchAll(statedOffset)) {
      if (letter?.toUpperCase() === this.dialect.offsetLetter) this.stated.set(Number(number), Number(mm));
    }
  }

  private setUp(block: ProgramBlock, words: Preparation): Trouble | null {
    const twice = block.words.find(
      ({ letter }, i) => !'GM'.includes(letter) && block.words.findIndex((w) => w.letter === letter) < i,
    );
    if (twice) return trouble(block, 'program-twice', `${twice.letter} stands twice in one block`);
    if (words.unit && this.unit && words.unit !== this.unit) {
      return trouble(block, 'program-unit-changes', 'The unit changes within the program');
    }
    if (words.zero !== null && this.zero !== null && words.zero !== this.zero) {
      return trouble(block, 'program-zero-changes', 'The zero changes within the program');
    }
    this.unit = words.unit ?? this.unit;
    this.zero = words.zero ?? this.zero;
    this.motion = words.motion ?? this.motion;
    this.side = words.side ?? this.side;
    if (words.distances) this.incremental = words.distances === 'incremental';
    this.register = wordOf(block, this.dialect.offsetLetter) ?? this.register;
    const feed = block.words.find(({ letter }) => letter === 'F');
    if (feed && !words.waits) {
      if (this.unit === null) return noUnit(block);
      this.feed = this.feedOf(feed);
      this.feedDecimals = Math.max(this.feedDecimals, feed.decimals ?? this.implied('feed'));
    }
    return null;
  }

  private go(block: ProgramBlock, words: Preparation): Trouble | null {
    if (words.waits) return null;
    const strange = block.words.find(({ letter }) => !silent.has(letter) && !'XYUVIJR'.includes(letter));
    if (strange) {
      return trouble(block, 'program-letter', `The letter ${strange.letter} is not one this check knows`);
    }
    const named = axes.filter(([, letter]) => wordOf(block, letter) !== null);
    const curved = ['I', 'J', 'R'].some((letter) => wordOf(block, letter) !== null);
    if (named.length === 0 && !curved) return null;
    if (this.unit === null) return noUnit(block);
    for (const { letter, decimals } of block.words) {
      if ('XYUVIJR'.includes(letter))
        this.decimals = Math.max(this.decimals, decimals ?? this.implied('length'));
    }
    if (this.incremental === null && !words.namesPlace) {
      return trouble(block, 'program-distances', 'The program moves before it says G90 or G91');
    }
    const to = this.placeOf(block, words.namesPlace || !this.incremental);
    if (!to) return trouble(block, 'program-place', 'Nobody can say where this block goes from');
    if (words.namesPlace) {
      this.namePlace(to);
      return null;
    }
    return this.move(block, to);
  }

  /** Where a block goes, before the shift of the zero; null while the place is not known. */
  private placeOf(block: ProgramBlock, absolute: boolean): AxisPlace | null {
    const { at, shift } = this;
    const place: Record<Axis, number> = { x: 0, y: 0, u: 0, v: 0 };
    for (const [axis, letter] of axes) {
      const value = this.lengthOf(block, letter);
      // The wire stands upright until U and V say otherwise.
      const before = at ? at[axis] - shift[axis] : axis === 'u' || axis === 'v' ? 0 : null;
      if (value !== null && absolute) place[axis] = value;
      else if (before === null) return null;
      else place[axis] = before + (value ?? 0);
    }
    return place;
  }

  private namePlace(named: AxisPlace): void {
    const { at } = this;
    if (!at) this.at = named;
    else {
      this.shift = { x: at.x - named.x, y: at.y - named.y, u: at.u - named.u, v: at.v - named.v };
    }
  }

  private move(block: ProgramBlock, named: AxisPlace): Trouble | null {
    const { motion, shift } = this;
    if (motion === null)
      return trouble(block, 'program-motion', 'The block does not say how to go: G00 to G03');
    const to = {
      x: named.x + shift.x,
      y: named.y + shift.y,
      u: named.u + shift.u,
      v: named.v + shift.v,
    };
    const from = this.at ?? to;
    const isArc = motion === 2 || motion === 3;
    const arc = isArc ? this.arcOf(block, from, to) : null;
    if (isArc && !arc) return trouble(block, 'program-arc', 'The arc has no centre that fits its ends');
    if (!isArc && ['I', 'J', 'R'].some((letter) => wordOf(block, letter) !== null)) {
      return trouble(block, 'program-arc-words', 'A straight move has the centre or radius of an arc');
    }
    this.moves.push({
      line: block.line,
      kind: arc ? 'arc' : motion === 0 ? 'rapid' : 'line',
      from,
      to,
      centre: arc?.centre ?? null,
      turn: arc?.turn ?? 0,
      feed: this.feed,
      side: this.side,
      register: this.side === 'off' ? null : this.register,
    });
    this.at = to;
    return null;
  }

  private arcOf(block: ProgramBlock, from: Point, to: Point) {
    if (!this.at) return null;
    const [i, j] = [this.lengthOf(block, 'I'), this.lengthOf(block, 'J')];
    const radius = this.lengthOf(block, 'R');
    const counterClockwise = this.motion === 3;
    if (radius !== null) {
      if (i !== null || j !== null) return null;
      // Ends and radius are rounded: a half turn may come out as wide as its last decimals allow.
      const slack = Math.min(2 * this.mm(1 / portable.powerOfTen(this.decimals)), tolerance.arcRadii);
      return arcOfRadius(from, to, radius, counterClockwise, slack);
    }
    if (i === null && j === null) return null;
    const toCentre = { x: i ?? 0, y: j ?? 0 };
    return toCentre.x === 0 && toCentre.y === 0 ? null : arcAboutCentre(from, to, toCentre, counterClockwise);
  }

  private pause(block: ProgramBlock): Trouble | null {
    for (const { letter, value } of block.words) {
      if (letter !== 'M') continue;
      if (value === 2 || value === 30) {
        this.ended = true;
        continue;
      }
      this.pauses.push({
        line: block.line,
        afterMoves: this.moves.length,
        kind: value === 0 ? 'stop' : value === 1 ? 'may stop' : 'machine',
        word: `M${String(value).padStart(2, '0')}`,
        said: block.comments.join(' '),
        side: this.side,
        afterRapid: this.moves.at(-1)?.kind === 'rapid',
      });
    }
    return null;
  }

  /** mm; null where the block has no such word. */
  private lengthOf(block: ProgramBlock, letter: string): number | null {
    const word = block.words.find((one) => one.letter === letter);
    if (!word) return null;
    return this.mm(
      word.decimals === null ? word.value / portable.powerOfTen(this.implied('length')) : word.value,
    );
  }

  private feedOf({ value, decimals }: ProgramWord): number {
    return this.mm(decimals === null ? value / portable.powerOfTen(this.implied('feed')) : value);
  }

  /** Digits after the point of a number without one. */
  private implied(kind: 'length' | 'feed'): number {
    const { impliedDecimals } = this.dialect;
    if (!impliedDecimals) return 0;
    if (kind === 'feed') return this.unit === 'inch' ? impliedDecimals.feedInch : impliedDecimals.feedMm;
    return this.unit === 'inch' ? impliedDecimals.inch : impliedDecimals.mm;
  }

  private mm(value: number): number {
    return this.unit === 'inch' ? value * mmPerInch : value;
  }
}

function wordOf(block: ProgramBlock, letter: string): number | null {
  return block.words.find((word) => word.letter === letter)?.value ?? null;
}

const trouble = (block: ProgramBlock, code: string, what: string): Trouble =>
  failed(code, what, `line ${block.line}`, 'Correct the program style, so that the path leaves no doubt.');

const noUnit = (block: ProgramBlock): Trouble =>
  trouble(block, 'program-no-unit', 'A length stands before the unit is said');
