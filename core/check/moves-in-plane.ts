import type { Point } from '../geometry/contour';
import type { WireMove } from './wire-path';
import * as portable from '../geometry/portable-math';

/**
 * The wire's way in the plane at a share of the height (0 that of X and Y, 1 that of U and V), from the moves of a
 * program's text. Both ends of the wire run a move in the same time; an arc turns by the same angle in every plane.
 */
export const movesInPlane = (moves: readonly WireMove[], share: number): readonly WireMove[] =>
  moves.map((move) => moveInPlane(move, share));

/** The same of one move. */
export function moveInPlane(move: WireMove, share: number): WireMove {
  const from = shifted(move.from, move.leanFrom, share);
  const to = shifted(move.to, move.leanTo, share);
  return { ...move, from, to, centre: move.centre && centreOver(from, to, move.turn) };
}

const shifted = ({ x, y }: Point, lean: Point, share: number): Point => ({
  x: x + lean.x * share,
  y: y + lean.y * share,
});

/** The centre about which a turn leads from one point to another: a chord c lies c / (2 tan(turn / 2)) away from it. */
function centreOver(from: Point, to: Point, turn: number): Point {
  const lift = 1 / (2 * portable.tan(turn / 2));
  return {
    x: (from.x + to.x) / 2 - (to.y - from.y) * lift,
    y: (from.y + to.y) / 2 + (to.x - from.x) * lift,
  };
}
