import type { Point, Vertex } from './contour';

/** The turn from the end tangent of one segment to the start tangent of the next, radians, left positive. */
export function turnBetween(from: Vertex, at: Vertex, to: Vertex): number {
  // A chord runs half the arc's angle away from the tangents at its ends: 2·atan(bulge).
  const arriving = Math.atan2(at.y - from.y, at.x - from.x) + 2 * Math.atan(from.bulge);
  const leaving = Math.atan2(to.y - at.y, to.x - at.x) - 2 * Math.atan(at.bulge);
  return Math.atan2(Math.sin(leaving - arriving), Math.cos(leaving - arriving));
}

/** The point halfway along a segment: an arc's lies bulge half chords to the right of the chord's middle. */
export const segmentMiddle = (from: Vertex, to: Point): Point => ({
  x: (from.x + to.x) / 2 + (from.bulge * (to.y - from.y)) / 2,
  y: (from.y + to.y) / 2 - (from.bulge * (to.x - from.x)) / 2,
});

/** A bend of less than this (radians) between neighbours counts as smooth: a twentieth of a degree is a drawing's rounding. */
export const cornerTurn = 0.001;
