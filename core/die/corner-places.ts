import type { Contour, Point, Vertex } from '../geometry/contour';
import { arcOf } from '../geometry/contour-measures';
import { cornerTurn, segmentMiddle, turnBetween } from '../geometry/segment-turn';
import * as portable from '../geometry/portable-math';

/** A corner of a drawn contour: a vertex where it turns, or a drawn radius between two edges. */
export interface CornerPlace {
  /** The vertex, or the middle of the drawn radius. mm. */
  readonly at: Point;
  /** Convex corners stand out of the contour: inside corners of a die, outside corners of a punch. */
  readonly kind: 'convex' | 'reflex';
  /** Between the edges, radians: π less the turn. */
  readonly angle: number;
  /** 0 for a sharp corner. mm. */
  readonly drawnRadius: number;
  /** The segments that meet there, or that the drawn radius joins: indices into the contour. */
  readonly edges: readonly [number, number];
}

/**
 * The corners of a counter-clockwise contour, in its order. A drawn radius counts where it runs smoothly between lines,
 * arcs that bend the other way or arcs at least three times as large, and turns by 10° to 170°: a full circle, the end
 * of a slot or an arc of a fitted curve is no corner.
 */
export function cornerPlaces(contour: Contour): readonly CornerPlace[] {
  const count = contour.length;
  return contour.flatMap((from, i): CornerPlace[] => {
    const [last, next] = [(i + count - 1) % count, (i + 1) % count];
    const to = contour[next] as Vertex;
    const before = contour[last] as Vertex;
    const after = contour[(i + 2) % count] as Vertex;
    const turn = turnBetween(before, from, to);
    if (Math.abs(turn) > cornerTurn) return [place(from, turn, 0, [last, i])];
    const bend = 4 * portable.atan(from.bulge);
    if (Math.abs(bend) < leastBend || Math.abs(bend) > greatestBend) return [];
    if (Math.abs(turnBetween(from, to, after)) > cornerTurn) return [];
    const { radius } = arcOf(from, to);
    const isEdge = (a: Vertex, b: Vertex): boolean =>
      a.bulge * from.bulge <= 0 || arcOf(a, b).radius >= edgeShare * radius;
    return isEdge(before, from) && isEdge(to, after)
      ? [place(segmentMiddle(from, to), bend, radius, [last, next])]
      : [];
  });
}

const leastBend = (10 * Math.PI) / 180;
const greatestBend = (170 * Math.PI) / 180;
const edgeShare = 3;

const place = (
  { x, y }: Point,
  turn: number,
  drawnRadius: number,
  edges: CornerPlace['edges'],
): CornerPlace => ({
  at: { x, y },
  kind: turn > 0 ? 'convex' : 'reflex',
  angle: Math.PI - Math.abs(turn),
  drawnRadius,
  edges,
});
