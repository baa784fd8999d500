import type { Point, Vertex } from './contour';
import * as portable from './portable-math';

/** The turn from the end tangent of one segment to the start tangent of the next, radians, left positive. */
export function turnBetween(from: Vertex, at: Vertex, to: Vertex): number {
  // A chord runs half the arc's angle away from the tangents at its ends: 2·atan(bulge).
  const arriving = portable.atan2(at.y - from.y, at.x - from.x) + 2 * portable.atan(from.bulge);
  const leaving = portable.atan2(to.y - at.y, to.x - at.x) - 2 * portable.atan(at.bulge);
  return portable.atan2(portable.sin(leaving - arriving), portable.cos(leaving - arriving));
}

/** The point halfway along a segment: an arc's lies bulge half chords to the right of the chord's middle. */
export const segmentMiddle = (from: Vertex, to: Point): Point => ({
  x: (from.x + to.x) / 2 + (from.bulge * (to.y - from.y)) / 2,
  y: (from.y + to.y) / 2 - (from.bulge * (to.x - from.x)) / 2,
});

/** A bend of less than this (radians) between neighbours counts as smooth: a twentieth of a degree is a drawing's rounding. */
export const cornerTurn = 0.001;
