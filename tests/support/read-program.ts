import type { Point } from '../../core/geometry/contour';

/**
 * A small reader of ISO 6983 programs for tests, written from the standard's words alone and sharing nothing with the
 * writer. It knows only the words that a program of ours may use and throws at any other.
 */
export interface ReadProgram {
  readonly unit: 'mm' | 'inch';
  readonly moves: readonly ReadMove[];
  readonly stops: readonly { readonly afterMoves: number; readonly comment: string; readonly side: Side }[];
  readonly comments: readonly string[];
  /** Every word's letter, with its number for G and M: `G01`, `X`. */
  readonly words: ReadonlySet<string>;
  readonly ended: boolean;
}

type Side = 'off' | 'left' | 'right';

export interface ReadMove {
  readonly kind: 'rapid' | 'line' | 'arc';
  readonly from: Point | null;
  readonly to: Point;
  /** U and V at the end of the move: how far the wire's upper end is from X and Y. */
  readonly lean: Point;
  readonly centre: Point | null;
  readonly counterClockwise: boolean;
  readonly feed: number | null;
  readonly side: Side;
  readonly offsetNumber: number | null;
  readonly text: string;
}

const known = 'G00 G01 G02 G03 G17 G40 G41 G42 G70 G71 G90 M00 M02 M30'.split(' ');

export function readProgram(text: string): ReadProgram {
  const lines = text.split('\n');
  if (lines[0] !== '%') throw new Error('A program starts with %');
  const moves: ReadMove[] = [];
  const stops: { afterMoves: number; comment: string; side: Side }[] = [];
  const comments: string[] = [];
  const words = new Set<string>();
  let unit: 'mm' | 'inch' | null = null;
  let at: Point | null = null;
  let lean: Point = { x: 0, y: 0 };
  let feed: number | null = null;
  let side: Side = 'off';
  let offsetNumber: number | null = null;
  let ended = false;
  for (const line of lines.slice(1)) {
    if (ended && line !== '') throw new Error(`After the end: ${line}`);
    const said = [...line.matchAll(/\(([^()]*)\)/g)].map((match) => match[1] ?? '');
    comments.push(...said);
    const bare = line.replace(/\([^()]*\)/g, '').trim();
    if (/[^A-Z0-9.\- ]/.test(bare)) throw new Error(`Not a block: ${line}`);
    const block = bare === '' ? [] : bare.split(' ').filter((word) => word !== '');
    const value = new Map<string, number>();
    const codes: string[] = [];
    for (const word of block) {
      const parts = /^([A-Z])(-?\d+(?:\.\d+)?)$/.exec(word);
      if (!parts?.[1] || !parts[2]) throw new Error(`Not a word: "${word}" in ${line}`);
      if (parts[1] === 'G' || parts[1] === 'M') {
        if (!known.includes(word)) throw new Error(`Not a word we may use: ${word}`);
        codes.push(word);
        words.add(word);
      } else {
        if (!'NXYUVIJFD'.includes(parts[1])) throw new Error(`Not a letter we may use: ${word}`);
        if ('XYUVIJF'.includes(parts[1]) && !parts[2].includes('.'))
          throw new Error(`No decimal point: ${word}`);
        if (value.has(parts[1])) throw new Error(`Twice in a block: ${line}`);
        value.set(parts[1], Number(parts[2]));
        words.add(parts[1]);
      }
    }
    if (codes.includes('G71')) unit = 'mm';
    if (codes.includes('G70')) unit = 'inch';
    if (codes.includes('G40')) side = 'off';
    if (codes.includes('G41')) side = 'left';
    if (codes.includes('G42')) side = 'right';
    feed = value.get('F') ?? feed;
    offsetNumber = value.get('D') ?? offsetNumber;
    const [x, y] = [value.get('X'), value.get('Y')];
    if (x !== undefined && y !== undefined) {
      const to = { x, y };
      const [u, v] = [value.get('U'), value.get('V')];
      if ((u === undefined) !== (v === undefined)) throw new Error(`U and V belong together: ${line}`);
      lean = { x: u ?? lean.x, y: v ?? lean.y };
      const [i, j] = [value.get('I'), value.get('J')];
      const code = codes.find((word) => ['G00', 'G01', 'G02', 'G03'].includes(word));
      if (code === undefined) throw new Error(`A move without its kind: ${line}`);
      const arc = code === 'G02' || code === 'G03';
      if (arc !== (i !== undefined && j !== undefined)) throw new Error(`I and J belong to arcs: ${line}`);
      if (arc && at === null) throw new Error(`An arc from nowhere: ${line}`);
      moves.push({
        kind: arc ? 'arc' : code === 'G00' ? 'rapid' : 'line',
        from: at,
        to,
        lean,
        centre: arc && at ? { x: at.x + (i ?? 0), y: at.y + (j ?? 0) } : null,
        counterClockwise: code === 'G03',
        feed,
        side,
        offsetNumber: side === 'off' ? null : offsetNumber,
        text: line,
      });
      at = to;
    }
    if (codes.includes('M00')) stops.push({ afterMoves: moves.length, comment: said.join(' '), side });
    if (codes.includes('M30') || codes.includes('M02')) ended = true;
  }
  if (unit === null) throw new Error('No unit');
  return { unit, moves, stops, comments, words, ended };
}

/** Radii of an arc move at its start and its end, in the program's unit. */
export function arcRadii(move: ReadMove): { readonly start: number; readonly end: number } {
  const { from, to, centre } = move;
  if (!from || !centre) throw new Error(`Not an arc: ${move.text}`);
  return {
    start: Math.hypot(from.x - centre.x, from.y - centre.y),
    end: Math.hypot(to.x - centre.x, to.y - centre.y),
  };
}

/** Length of a move, in the program's unit. */
export function moveLength(move: ReadMove): number {
  const { from, to, centre } = move;
  if (!from) return 0;
  if (!centre) return Math.hypot(to.x - from.x, to.y - from.y);
  const turn =
    Math.atan2(to.y - centre.y, to.x - centre.x) - Math.atan2(from.y - centre.y, from.x - centre.x);
  const full = 2 * Math.PI;
  const angle = move.counterClockwise ? (turn + 2 * full) % full : (2 * full - turn) % full;
  return angle * arcRadii(move).start;
}
