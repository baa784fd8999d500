import type { Point } from '../geometry/contour';
import { lengthOf, type PlainMove } from './beside-move';
import { compensatedRun } from './compensated-run';
import type { ProgramFault } from './program-fault';
import type { AxisPlace, ProgramMove, ProgramReading } from './program-reading';

/** A stretch of the way of the wire's centre, with the move of the program that it belongs to. mm. */
export interface WireMove extends PlainMove {
  readonly line: number;
  /** Index into the reading's moves. */
  readonly move: number;
  readonly isRapid: boolean;
  /** mm/min. */
  readonly feed: number | null;
  /** How far U and V lean the wire at both ends. */
  readonly leanFrom: Point;
  readonly leanTo: Point;
}

export interface WirePath {
  readonly moves: readonly WireMove[];
  readonly faults: readonly ProgramFault[];
}

/**
 * The way of the wire's centre, from a program as read: as programmed where the offset is off, else offset by the
 * entry of the control's table (`offsets`, mm by number). Our own arithmetic of the control, sharing nothing with the
 * offset that the path came from.
 */
export function wirePath(reading: ProgramReading, offsets: ReadonlyMap<number, number>): WirePath {
  const moves: WireMove[] = [];
  const faults: ProgramFault[] = [];
  for (let at = 0; at < reading.moves.length;) {
    const move = reading.moves[at] as ProgramMove;
    if (move.side === 'off') {
      moves.push(asProgrammed(move, at, moves.at(-1)?.to));
      at++;
      continue;
    }
    const end = endOfRun(reading.moves, at);
    const run = reading.moves.slice(at, end);
    faults.push(...switchFaults(run, reading.moves[end], offsets));
    const offset = offsets.get(move.register ?? Number.NaN) ?? 0;
    const left = move.side === 'left' ? offset : -offset;
    const offsetRun = compensatedRun(run.slice(1), left, reading.step);
    faults.push(...offsetRun.faults);
    const [first] = offsetRun.pieces;
    // The offset comes on along the first move, which ends square to where the second one starts.
    moves.push({ ...asProgrammed(move, at, moves.at(-1)?.to), to: first?.from ?? move.to });
    const indexOf = new Map(run.map((source, index) => [source, at + index]));
    for (const { source, ...piece } of offsetRun.pieces) {
      moves.push({ ...asProgrammed(source, indexOf.get(source) ?? at), ...piece });
    }
    at = end;
  }
  return { moves, faults };
}

/** A move as it is programmed, from where the wire really is. */
function asProgrammed(move: ProgramMove, index: number, from: Point = move.from): WireMove {
  return {
    line: move.line,
    move: index,
    isRapid: move.kind === 'rapid',
    feed: move.feed,
    from,
    to: { x: move.to.x, y: move.to.y },
    centre: move.centre,
    turn: move.turn,
    leanFrom: leanOf(move.from),
    leanTo: leanOf(move.to),
  };
}

const leanOf = ({ u, v }: AxisPlace): Point => ({ x: u, y: v });

/** The first move after a run of moves with one side and one entry of the table. */
function endOfRun(moves: readonly ProgramMove[], start: number): number {
  const { side, register } = moves[start] as ProgramMove;
  let end = start + 1;
  while (moves[end]?.side === side && moves[end]?.register === register) end++;
  return end;
}

/** How the offset goes on and off: along straight feeds at least as long as itself, and with a known entry. */
function switchFaults(
  run: readonly ProgramMove[],
  next: ProgramMove | undefined,
  offsets: ReadonlyMap<number, number>,
): ProgramFault[] {
  const [first] = run as [ProgramMove];
  const faults: ProgramFault[] = [];
  const fault = (move: ProgramMove, say: string) => faults.push({ line: move.line, say, at: move.to });
  const offset = offsets.get(first.register ?? Number.NaN);
  if (offset === undefined) {
    fault(first, `The offset D${first.register ?? ' (none)'} is not in the table`);
    return faults;
  }
  if (!isStraightFeed(first) || lengthOf(first) < offset) {
    fault(first, 'The offset comes on along a move that is no straight feed at least as long as the offset');
  }
  if (!next) fault(run.at(-1) ?? first, 'The program ends with the offset on');
  else if (next.side !== 'off') fault(next, 'The offset changes while it is on');
  else if (!isStraightFeed(next) || lengthOf(next) < offset) {
    fault(next, 'The offset goes off along a move that is no straight feed at least as long as the offset');
  }
  return faults;
}

const isStraightFeed = (move: ProgramMove): boolean => move.kind === 'line';
