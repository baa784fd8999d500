import type { Box, Point } from '../geometry/contour';
import * as portable from '../geometry/portable-math';

/** A straight move or an arc, without anything else that a program says of it. mm, radians. */
export interface PlainMove {
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point | null;
  /** Positive counter-clockwise, 0 for a straight move. */
  readonly turn: number;
}

/** The move that runs beside another at a distance, left of its travel; null inside an arc that is too small for it. */
export function besideMove(move: PlainMove, left: number): PlainMove | null {
  const { from, to, centre, turn } = move;
  if (!centre) {
    const { x, y } = headingAtStart(move);
    const shifted = (point: Point) => ({ x: point.x - y * left, y: point.y + x * left });
    return { from: shifted(from), to: shifted(to), centre: null, turn: 0 };
  }
  const radius = radiusOf(move);
  // Left of a counter-clockwise arc is its inside.
  const beside = turn > 0 ? radius - left : radius + left;
  if (beside <= 0) return null;
  const shifted = (point: Point) => {
    const share = beside / Math.hypot(point.x - centre.x, point.y - centre.y);
    return { x: centre.x + (point.x - centre.x) * share, y: centre.y + (point.y - centre.y) * share };
  };
  return { from: shifted(from), to: shifted(to), centre, turn };
}

export const radiusOf = ({ from, centre }: PlainMove): number =>
  centre ? Math.hypot(from.x - centre.x, from.y - centre.y) : Infinity;

export const lengthOf = (move: PlainMove): number =>
  move.centre
    ? radiusOf(move) * Math.abs(move.turn)
    : Math.hypot(move.to.x - move.from.x, move.to.y - move.from.y);

/** Unit vector of travel at the start of a move. */
export const headingAtStart = (move: PlainMove): Point => headingAt(move, move.from);
export const headingAtEnd = (move: PlainMove): Point => headingAt(move, move.to);

function headingAt({ from, to, centre, turn }: PlainMove, at: Point): Point {
  const [x, y] = centre
    ? [-(at.y - centre.y) * Math.sign(turn), (at.x - centre.x) * Math.sign(turn)]
    : [to.x - from.x, to.y - from.y];
  const length = Math.hypot(x, y);
  return length === 0 ? { x: 0, y: 0 } : { x: x / length, y: y / length };
}

/** The angle from one heading to another, −π to π. */
export const turnBetween = (a: Point, b: Point): number =>
  portable.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);

/** The point of a move so many mm after its start. */
export function pointOn(move: PlainMove, along: number): Point {
  const { from, to, centre, turn } = move;
  const length = lengthOf(move);
  const share = length === 0 ? 0 : along / length;
  if (!centre) return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
  const [x, y] = [from.x - centre.x, from.y - centre.y];
  const [cos, sin] = [portable.cos(turn * share), portable.sin(turn * share)];
  return { x: centre.x + x * cos - y * sin, y: centre.y + x * sin + y * cos };
}

/** A box that holds the move; an arc of more than a quarter turn may be given the box of its circle. */
export function boxOfMove(move: PlainMove): Box {
  const { from, to, centre, turn } = move;
  const [minX, maxX] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const [minY, maxY] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  if (!centre) return { minX, minY, maxX, maxY };
  const radius = radiusOf(move);
  if (Math.abs(turn) > Math.PI / 2) {
    return {
      minX: centre.x - radius,
      minY: centre.y - radius,
      maxX: centre.x + radius,
      maxY: centre.y + radius,
    };
  }
  const sagitta = radius * (1 - portable.cos(turn / 2));
  return { minX: minX - sagitta, minY: minY - sagitta, maxX: maxX + sagitta, maxY: maxY + sagitta };
}
