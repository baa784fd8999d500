import type { Contour, Point } from '../../core/geometry/contour';

/** A straight move, or one about a centre. */
export interface PlainMove {
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point | null;
  readonly counterClockwise: boolean;
}

/** Distance from a point to the nearest of some moves, by the plain definitions: slow, and no code of ours in it. */
export function distanceToMoves(point: Point, moves: readonly PlainMove[]): number {
  return Math.min(...moves.map((move) => distanceToMove(point, move)));
}

function distanceToMove(point: Point, { from, to, centre, counterClockwise }: PlainMove): number {
  if (centre === null) {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const along = ((point.x - from.x) * dx + (point.y - from.y) * dy) / (dx * dx + dy * dy || 1);
    const t = Math.min(1, Math.max(0, along));
    return Math.hypot(point.x - from.x - t * dx, point.y - from.y - t * dy);
  }
  const [a, b] = counterClockwise ? [from, to] : [to, from];
  const angle = (p: Point) => Math.atan2(p.y - centre.y, p.x - centre.x);
  const turn = (p: Point) => (angle(p) - angle(a) + 4 * Math.PI) % (2 * Math.PI);
  if (turn(point) <= turn(b)) {
    const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
    return Math.abs(Math.hypot(point.x - centre.x, point.y - centre.y) - radius);
  }
  return Math.min(Math.hypot(point.x - from.x, point.y - from.y), Math.hypot(point.x - to.x, point.y - to.y));
}

/** The segments of a contour as moves. Centre by L(1 + b²)/(4b), DXF reference, group 42. */
export function contourMoves(contour: Contour): PlainMove[] {
  return contour.map((from, index) => {
    const to = contour[(index + 1) % contour.length] ?? from;
    const b = from.bulge;
    const lift = b === 0 ? 0 : (1 - b * b) / (4 * b);
    const centre = {
      x: (from.x + to.x) / 2 - (to.y - from.y) * lift,
      y: (from.y + to.y) / 2 + (to.x - from.x) * lift,
    };
    return { from, to, centre: b === 0 ? null : centre, counterClockwise: b > 0 };
  });
}

/** Points on every segment of a contour, ends included, about 0.02 mm apart. */
export function pointsAlong(contour: Contour): Point[] {
  return contourMoves(contour).flatMap((move) => pointsOfMove(move, 0.02));
}

/** Points on a move, ends included, `apart` mm from one another or a little nearer. */
export function pointsOfMove({ from, to, centre, counterClockwise }: PlainMove, apart: number): Point[] {
  const full = 2 * Math.PI;
  const angle = (p: Point) => (centre ? Math.atan2(p.y - centre.y, p.x - centre.x) : 0);
  const start = angle(from);
  const turned = counterClockwise ? angle(to) - start : start - angle(to);
  const turn = (counterClockwise ? 1 : -1) * ((turned + 2 * full) % full);
  const radius = centre ? Math.hypot(from.x - centre.x, from.y - centre.y) : 0;
  const length = centre ? radius * Math.abs(turn) : Math.hypot(to.x - from.x, to.y - from.y);
  const count = Math.max(1, Math.ceil(length / apart));
  return Array.from({ length: count + 1 }, (_, index) => {
    const t = index / count;
    if (!centre) return { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
    return {
      x: centre.x + radius * Math.cos(start + t * turn),
      y: centre.y + radius * Math.sin(start + t * turn),
    };
  });
}
