import type { Point } from '../geometry/contour';
import { lengthOf, pointOn } from './beside-move';
import type { IntendedMove, IntendedMoves } from './intended-moves';
import type { ProgramFault } from './program-fault';
import type { ProgramMove, ProgramReading } from './program-reading';

/**
 * Where a program's text says anything else than was intended: another place (by more than rounding to the last
 * decimal), another way there, another feed, side or entry of the offset table, a stop that is missing, a move too many
 * or too few. Moves that rounding makes empty may be left out. The first difference only, since the rest follow from it.
 */
export function sameMoves(
  reading: ProgramReading,
  intended: IntendedMoves,
  saysFeeds: boolean,
): readonly ProgramFault[] {
  const { moves, step } = reading;
  const words = wordsAfter(reading.pauses.map(({ afterMoves, word }) => [afterMoves, word]));
  const wantedWords = wordsAfter(
    intended.pauses.flatMap((pause) => pause.words.map((word): [number, string] => [pause.after, word])),
  );
  let at: IntendedMove | null = null;
  let next = 0;
  for (const [index, wanted] of intended.moves.entries()) {
    const move = moves[next];
    const before: IntendedMove = at ?? wanted;
    const from = before.to;
    at = wanted;
    const difference = move ? differenceOf(move, from, wanted, reading, saysFeeds) : 'The program ends early';
    if (difference === null) next++;
    else if (!isEmptied(before, wanted, step)) return [fault(move, difference, wanted.to)];
    const missing = missingWord(wantedWords.get(index + 1) ?? [], words.get(next) ?? []);
    if (missing) return [fault(moves[next - 1], `${missing} is missing after this line`, wanted.to)];
  }
  const extra = moves[next];
  return extra ? [fault(extra, 'The program goes on after what was planned', extra.to)] : [];
}

/** The feed that was planned for each move of a text that says none, mm/min; 0 for rapid moves. */
export function plannedFeeds({ moves, step }: ProgramReading, intended: IntendedMoves): readonly number[] {
  let next = 0;
  return moves.map(({ to }) => {
    const isHere = (wanted: IntendedMove) =>
      Math.abs(wanted.to.x - to.x) <= step && Math.abs(wanted.to.y - to.y) <= step;
    // Moves that rounding empties are not in the text.
    while (next + 1 < intended.moves.length && !isHere(intended.moves[next] as IntendedMove)) next++;
    return intended.moves[next++]?.feed ?? 0;
  });
}

/** M words by how many moves are done before them, in order. */
function wordsAfter(pauses: readonly (readonly [number, string])[]): ReadonlyMap<number, readonly string[]> {
  const words = new Map<number, string[]>();
  for (const [after, word] of pauses) words.set(after, [...(words.get(after) ?? []), word]);
  return words;
}

/** The first wanted word that does not stand there in its order; null where all do. Further words do no harm. */
function missingWord(wanted: readonly string[], words: readonly string[]): string | null {
  let from = 0;
  for (const word of wanted) {
    const at = words.indexOf(word, from);
    if (at < 0) return word;
    from = at + 1;
  }
  return null;
}

/** What a move says otherwise than intended, in words; null where it says the same. */
function differenceOf(
  move: ProgramMove,
  from: Point,
  wanted: IntendedMove,
  { step, feedStep }: ProgramReading,
  saysFeeds: boolean,
): string | null {
  const near = step * (0.5 + hair);
  if (Math.abs(move.to.x - wanted.to.x) > near || Math.abs(move.to.y - wanted.to.y) > near) {
    return `Line ${move.line} goes to ${sayPlace(move.to)}, planned is ${sayPlace(wanted.to)}`;
  }
  if (Math.abs(move.to.u - wanted.lean.x) > near || Math.abs(move.to.v - wanted.lean.y) > near) {
    return `Line ${move.line} leans the wire another way than planned`;
  }
  if ((move.kind === 'rapid') !== wanted.isRapid) return 'A rapid move and a feed are mixed up';
  const middle = wanted.isRapid ? null : middleOf(from, wanted);
  if (middle) {
    const real = pointOn(move, lengthOf(move) / 2);
    // Both ends and the centre are rounded.
    if (Math.hypot(real.x - middle.x, real.y - middle.y) > roundedPoints * step) {
      return `Line ${move.line} gets there another way than planned`;
    }
  }
  if (move.side !== wanted.side || move.register !== wanted.register) {
    return `Line ${move.line} has another offset than planned`;
  }
  const feedOff = wanted.feed === null ? 0 : Math.abs((move.feed ?? 0) - wanted.feed);
  // A feed that would round to nothing is one last decimal.
  const slowest = (wanted.feed ?? 0) < feedStep / 2 ? feedStep : 0;
  if (saysFeeds && feedOff > Math.max(slowest, feedStep * (0.5 + hair))) {
    return `Line ${move.line} has another feed than planned`;
  }
  return null;
}

/** Of a last decimal: rounding of the numbers themselves in double precision. */
const hair = 0.001;

/** In last decimals: ends and centre are each off by up to √2/2. */
const roundedPoints = 3;

function middleOf(from: Point, { to, bulge }: IntendedMove): Point {
  // The sagitta is half the chord times the bulge, right of the chord where the arc turns left.
  return {
    x: (from.x + to.x) / 2 + ((to.y - from.y) / 2) * bulge,
    y: (from.y + to.y) / 2 - ((to.x - from.x) / 2) * bulge,
  };
}

const isEmptied = (from: IntendedMove, { to, lean, isRapid }: IntendedMove, step: number): boolean =>
  !isRapid && isWithin(from.to, to, step) && isWithin(from.lean, lean, step);

const isWithin = (a: Point, b: Point, step: number): boolean =>
  Math.abs(a.x - b.x) <= step && Math.abs(a.y - b.y) <= step;

const sayPlace = ({ x, y }: Point): string => `${x.toFixed(5)}, ${y.toFixed(5)} mm`;

const fault = (move: ProgramMove | undefined, say: string, at: Point): ProgramFault => ({
  line: move?.line ?? null,
  say,
  at,
});
