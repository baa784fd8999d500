import { lengthOf, pointOn } from '../../core/check/beside-move';
import { moveInPlane } from '../../core/check/moves-in-plane';
import type { ProgramPause, ProgramReading } from '../../core/check/program-reading';
import type { WireMove, WirePath } from '../../core/check/wire-path';
import type { Point } from '../../core/geometry/contour';

/** Where a program waits, on the clock. */
export interface TimedPause extends ProgramPause {
  /** Seconds after the start. */
  readonly time: number;
  /** Whether the wire is threaded here. */
  readonly isThreading: boolean;
}

/** A program on the clock: when the wire is where, and which line says so. Seconds; stops take no time. */
export interface Timeline {
  readonly moves: readonly WireMove[];
  /** When each move starts, and at last when the program ends: one more than there are moves. */
  readonly starts: Float64Array;
  readonly total: number;
  readonly pauses: readonly TimedPause[];
}

export interface ReplayPlace {
  /** Index of the move; −1 where there are none. */
  readonly move: number;
  /** How much of the move is done, 0 to 1. */
  readonly share: number;
  /** The wire's centre, and how far U and V lean it there. mm. */
  readonly at: Point;
  readonly lean: Point;
  readonly line: number;
}

/**
 * A program's clock: the length of each feed halfway up the wire over its feed, the same `threadingSeconds` for each way to a new start hole
 * (cutting the wire, moving, threading). A feed without a number takes no time.
 */
export function timelineOf(path: WirePath, reading: ProgramReading, threadingSeconds: number): Timeline {
  const { moves } = path;
  const starts = new Float64Array(moves.length + 1);
  moves.forEach((move, index) => {
    starts[index + 1] = (starts[index] ?? 0) + secondsOf(move, threadingSeconds);
  });
  const total = starts[moves.length] ?? 0;
  // The first stretch of the wire that belongs to a move of the program or a later one.
  const firstOf = new Int32Array(reading.moves.length + 1).fill(moves.length);
  for (let i = moves.length - 1; i >= 0; i--) firstOf[(moves[i] as WireMove).move] = i;
  for (let k = reading.moves.length - 1; k >= 0; k--) {
    firstOf[k] = Math.min(firstOf[k] ?? moves.length, firstOf[k + 1] ?? moves.length);
  }
  const pauses = reading.pauses.map((pause) => ({
    ...pause,
    time: starts[firstOf[pause.afterMoves] ?? moves.length] ?? total,
    isThreading: pause.afterRapid && pause.afterMoves > 0,
  }));
  return { moves, starts, total, pauses };
}

/** Where the wire is at a time; at the end of a move that is still this move. Before the start and after the end it waits there. */
export function placeAt(timeline: Timeline, time: number): ReplayPlace {
  const move = moveAt(timeline, time);
  const stretch = timeline.moves[move];
  if (!stretch) return { move: -1, share: 0, at: origin, lean: origin, line: 0 };
  const start = timeline.starts[move] ?? 0;
  const seconds = (timeline.starts[move + 1] ?? start) - start;
  const share = seconds > 0 ? Math.min(1, Math.max(0, (time - start) / seconds)) : 1;
  const { leanFrom, leanTo } = stretch;
  return {
    move,
    share,
    at: pointOn(stretch, share * lengthOf(stretch)),
    lean: {
      x: leanFrom.x + (leanTo.x - leanFrom.x) * share,
      y: leanFrom.y + (leanTo.y - leanFrom.y) * share,
    },
    line: stretch.line,
  };
}

/** When the wire has done what a line says; for a line that moves nothing, when it is reached. */
export function timeOfLine({ moves, starts, total }: Timeline, line: number): number {
  let time = 0;
  for (let i = 0; i < moves.length; i++) {
    const move = moves[i] as WireMove;
    if (move.line > line) break;
    time = starts[i + 1] ?? total;
  }
  return time;
}

/** When the program's next move ends, or when the one before ended: `way` 1 or −1. Moves that take no time are passed. */
export function timeOfStep(timeline: Timeline, time: number, way: 1 | -1): number {
  const { moves, starts, total } = timeline;
  // A corner belongs to the move that it leads to: both are one step.
  const endsStep = (i: number) => moves[i]?.move !== moves[i + 1]?.move;
  if (way > 0) {
    for (let i = Math.max(0, moveAt(timeline, time)); i < moves.length; i++) {
      const end = starts[i + 1] ?? total;
      if (endsStep(i) && end > time) return end;
    }
    return total;
  }
  for (let i = moveAt(timeline, time) - 1; i >= 0; i--) {
    const end = starts[i + 1] ?? total;
    if (endsStep(i) && end < time) return end;
  }
  return 0;
}

/** The last move that starts before a time; the first one at the start. */
function moveAt({ moves, starts }: Timeline, time: number): number {
  let [low, high] = [0, moves.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) < time) low = middle;
    else high = middle - 1;
  }
  return high < 0 ? -1 : low;
}

/** Where a leaning wire's feed counts: its lower end may rest while the upper one turns. */
const halfwayUp = (move: WireMove): WireMove => moveInPlane(move, 0.5);

function secondsOf(move: WireMove, threadingSeconds: number): number {
  if (move.isRapid) return threadingSeconds;
  return move.feed !== null && move.feed > 0 ? (60 * lengthOf(halfwayUp(move))) / move.feed : 0;
}

const origin: Point = { x: 0, y: 0 };
