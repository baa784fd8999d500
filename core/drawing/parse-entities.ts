import { done, failed, type Problem, type Result } from '../problem';
import type { DrawingRecords, EntityRecord } from './drawing-records';
import { groupsOf, isCurveKind, isWholeGroup } from './entity-groups';
import type { Groups } from './group-values';
import { limits } from './limits';
import { numberAt, placeOf, textAt, wholeAt, type Pairs } from './pairs';
import { WordPool } from './word-pool';

/** An entity with its names decoded and its numbers read, nothing interpreted yet. */
export interface ParsedEntity {
  readonly kind: string;
  readonly layer: string;
  readonly lineType: string;
  /** Colour index: 0 that of the block, 256 that of the layer. */
  readonly colour: number;
  readonly invisible: boolean;
  readonly inPaper: boolean;
  /** Group 2: the block of an INSERT or of a DIMENSION. */
  readonly name: string;
  /** Whether all its numbers are sound; always true of curves. */
  readonly isSound: boolean;
  readonly groups: Groups;
  /** POLYLINE: its vertices. */
  readonly vertices: readonly Groups[];
  readonly record: EntityRecord;
}

export interface ParsedBlock {
  readonly name: string;
  readonly base: { readonly x: number; readonly y: number; readonly z: number };
  /** Group 70 of the block (DXF reference, BLOCK): 4 says that it is an external reference. */
  readonly flags: number;
  readonly entities: readonly ParsedEntity[];
}

export interface ParsedDrawing {
  readonly entities: readonly ParsedEntity[];
  /** By blockKey. */
  readonly blocks: ReadonlyMap<string, ParsedBlock>;
}

/** The name a block is looked up by: DXF knows no case. */
export const blockKey = (name: string): string => name.toUpperCase();

/**
 * Reads the entities of a file from its pairs. The first number of a curve that is none is a problem: where a reader
 * takes `1,5` and `1D2` for 1 and `nan` for nothing without a word, a part cut to such a number is scrap.
 */
export function parseEntities(
  pairs: Pairs,
  records: DrawingRecords,
  decode: (latin: string) => string,
): Result<ParsedDrawing> {
  const parser = new EntityParser(pairs, decode);
  const blocks = new Map<string, ParsedBlock>();
  for (const record of records.blocks) {
    const base = { x: 0, y: 0, z: 0 };
    let flags = 0;
    let name = '';
    for (let i = record.from; i < record.to; i++) {
      const code = pairs.codes[i];
      if (code === 2 && name === '') name = decode(textAt(pairs, i));
      else if (code === 10) base.x = parser.number(i, 'BLOCK');
      else if (code === 20) base.y = parser.number(i, 'BLOCK');
      else if (code === 30) base.z = parser.number(i, 'BLOCK');
      else if (code === 70) flags = parser.number(i, 'BLOCK');
    }
    const entities = record.entities.map((entity) => parser.entity(entity));
    // Of two blocks with one name the first counts, as drawing programs do it.
    if (!blocks.has(blockKey(name))) blocks.set(blockKey(name), { name, base, flags, entities });
  }
  const entities = records.entities.map((record) => parser.entity(record));
  return parser.problem ? { ok: false, problem: parser.problem } : done({ entities, blocks });
}

/** Reads numbers into one column beside the pairs and keeps the first problem; lives for one file. */
class EntityParser {
  problem: Problem | null = null;
  private readonly pairs: Pairs;
  private readonly values: Float64Array;
  private readonly names: WordPool;

  constructor(pairs: Pairs, decode: (latin: string) => string) {
    this.pairs = pairs;
    this.values = new Float64Array(pairs.count).fill(Number.NaN);
    this.names = new WordPool(pairs, decode);
  }

  entity(record: EntityRecord): ParsedEntity {
    const { pairs } = this;
    const { kind } = record;
    const wanted = groupsOf(kind);
    let layer = '0';
    let lineType = '';
    let name = '';
    let colour = 256;
    let invisible = false;
    let inPaper = false;
    let isSound = true;
    const to = this.endOf(record);
    for (let i = record.from; i < to; i++) {
      const code = pairs.codes[i] as number;
      if (code < 10) {
        if (code === 8) layer = this.names.at(i);
        else if (code === 6) lineType = this.names.at(i);
        else if (code === 2) name = this.names.at(i);
        continue;
      }
      if (!wanted.has(code)) continue;
      const value = this.number(i, kind);
      if (Number.isNaN(value)) isSound = false;
      else if (code === 60) invisible = value === 1;
      else if (code === 67) inPaper = value === 1;
      else if (code === 62) colour = value;
    }
    const vertices = record.vertices.length > 0 ? record.vertices.map((vertex) => this.vertex(vertex)) : none;
    const groups = { codes: pairs.codes, values: this.values, from: record.from, to };
    return { kind, layer, lineType, colour, invisible, inPaper, name, isSound, groups, vertices, record };
  }

  /** The number of a pair, read once and kept; NaN with a problem where it is none and matters. */
  number(i: number, kind: string): number {
    const code = this.pairs.codes[i] as number;
    const value = isWholeGroup(code) ? wholeAt(this.pairs, i) : numberAt(this.pairs, i);
    const isFit = !Number.isNaN(value) && (isWholeGroup(code) || Math.abs(value) <= limits.coordinate);
    this.values[i] = isFit ? value : Number.NaN;
    if (!isFit && (isCurveKind(kind) || kind === 'VERTEX' || kind === 'BLOCK'))
      this.problem ??= badNumber(this.pairs, i, kind);
    return this.values[i];
  }

  private vertex(record: EntityRecord): Groups {
    const wanted = groupsOf('VERTEX');
    const to = this.endOf(record);
    for (let i = record.from; i < to; i++)
      if (wanted.has(this.pairs.codes[i] as number)) this.number(i, 'VERTEX');
    return { codes: this.pairs.codes, values: this.values, from: record.from, to };
  }

  /** From group 101 on an embedded object repeats the codes of its host with other meanings (from R2018). */
  private endOf({ from, to }: EntityRecord): number {
    for (let i = from; i < to; i++) if (this.pairs.codes[i] === 101) return i;
    return to;
  }
}

const none: readonly Groups[] = [];

function badNumber(pairs: Pairs, i: number, kind: string): Problem {
  const code = pairs.codes[i] as number;
  const text = textAt(pairs, i);
  const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  const value = isWholeGroup(code) ? wholeAt(pairs, i) : numberAt(pairs, i);
  const whole = isWholeGroup(code) ? 'whole number' : 'number';
  const what = Number.isNaN(value)
    ? `"${shown}" is not a ${whole} (group ${code} of a ${kind})`
    : `${shown} is too large for a drawing (group ${code} of a ${kind})`;
  return failed('drawing-bad-number', what, placeOf(pairs, i), adviceFor(text)).problem;
}

function adviceFor(text: string): string {
  if (/^[-+]?\d+,\d+$/.test(text))
    return 'DXF writes a decimal point: export the drawing again with a point instead of the comma.';
  return 'Correct the number, or have the drawing exported again.';
}
