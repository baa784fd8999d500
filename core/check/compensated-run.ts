import type { Point } from '../geometry/contour';
import { compensationRoom } from '../wire/compensation-room';
import { besideMove, headingAtEnd, headingAtStart, lengthOf, radiusOf, turnBetween } from './beside-move';
import type { PlainMove } from './beside-move';
import { meetingOfMoves } from './meeting-of-moves';
import type { ProgramFault } from './program-fault';
import type { ProgramMove } from './program-reading';

/** A stretch of the wire's way that one move of the program gives. */
export interface OffsetPiece extends PlainMove {
  readonly source: ProgramMove;
}

/**
 * The way of the wire's centre along moves that a control offsets, `left` of their travel (negative: right), by the
 * plain rules of a control: parallels and concentric arcs, an arc about every corner that opens, the meeting point at
 * every corner that closes, square to the first move at its start and to the last one at its end. Moves nearer to
 * tangent than `step`, the program's last decimal, lets be told are joined as they are.
 *
 * What a control would refuse is a fault: an inside arc no larger than the offset, or a corner that takes more of a
 * move than there is.
 */
export function compensatedRun(
  moves: readonly ProgramMove[],
  left: number,
  step: number,
): { readonly pieces: readonly OffsetPiece[]; readonly faults: readonly ProgramFault[] } {
  const pieces: Piece[] = [];
  const faults: ProgramFault[] = [];
  for (const source of moves) {
    if (lengthOf(source) === 0) continue;
    const beside = besideMove(source, left);
    if (!beside) {
      const say = `The inside arc of radius ${radiusOf(source).toFixed(5)} mm is not larger than the offset`;
      faults.push({ line: source.line, say, at: source.to });
      continue;
    }
    const piece: Piece = { ...beside, source };
    const before = pieces.at(-1);
    const joined = before ? join(before, piece, left, step) : [];
    if (!joined) {
      const say = 'The corner takes more of a move than there is, with the offset on';
      faults.push({ line: source.line, say, at: source.from });
    }
    pieces.push(...(joined ?? []), piece);
  }
  return { pieces, faults };
}

interface Piece extends OffsetPiece {
  from: Point;
  to: Point;
  turn: number;
}

/** Trims two pieces to where they meet, or says what lies between them; null where a control could not go on. */
function join(before: Piece, after: Piece, left: number, step: number): Piece[] | null {
  const gap = Math.hypot(after.from.x - before.to.x, after.from.y - before.to.y);
  const corner = after.source.from;
  const turn = turnBetween(headingAtEnd(before.source), headingAtStart(after.source));
  const straight = { from: before.to, to: after.from, centre: null, turn: 0, source: after.source };
  if (gap <= cannotBeTold * step) return gap === 0 ? [] : [straight];
  const closes = turn > 0 === left > 0;
  if (!closes) return [{ ...straight, centre: corner, turn }];
  const meeting = meetingOfMoves(before, after, corner);
  if (meeting && trimEnd(before, meeting) && trimStart(after, meeting)) return [];
  return gap <= compensationRoom(step) ? [straight] : null;
}

/** Rounding of the ends and the centre of both moves, in last decimals. */
const cannotBeTold = 4;

/** Lets a piece end earlier; false where the place lies before its start. */
function trimEnd(piece: Piece, end: Point): boolean {
  if (!piece.centre) {
    const heading = headingAtStart(piece);
    if ((end.x - piece.from.x) * heading.x + (end.y - piece.from.y) * heading.y < 0) return false;
  } else {
    const cut = angleFrom(piece.centre, end, piece.to) * Math.sign(piece.turn);
    const rest = Math.abs(piece.turn) - cut;
    if (rest < 0) return false;
    piece.turn = rest * Math.sign(piece.turn);
  }
  piece.to = end;
  return true;
}

/** Lets a piece start later; false where the place lies after its end. */
function trimStart(piece: Piece, start: Point): boolean {
  if (!piece.centre) {
    const heading = headingAtStart(piece);
    if ((piece.to.x - start.x) * heading.x + (piece.to.y - start.y) * heading.y < 0) return false;
  } else {
    const cut = angleFrom(piece.centre, piece.from, start) * Math.sign(piece.turn);
    const rest = Math.abs(piece.turn) - cut;
    if (rest < 0) return false;
    piece.turn = rest * Math.sign(piece.turn);
  }
  piece.from = start;
  return true;
}

/** The angle about a centre from one point to another, the short way. */
function angleFrom(centre: Point, a: Point, b: Point): number {
  return turnBetween({ x: a.x - centre.x, y: a.y - centre.y }, { x: b.x - centre.x, y: b.y - centre.y });
}
