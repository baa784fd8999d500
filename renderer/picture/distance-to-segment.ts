import { arcOf } from '../../core/geometry/contour-measures';
import type { Point, Vertex } from '../../core/geometry/contour';

/** Distance of a point from the segment that leaves `from`, mm. */
export function distanceToSegment(point: Point, from: Vertex, to: Vertex): number {
  if (from.bulge === 0) return distanceToLine(point, from, to);
  const { cx, cy, radius } = arcOf(from, to);
  // Within the sector of the arc the circle is nearest, elsewhere one of the ends.
  const angle = Math.atan2(point.y - cy, point.x - cx);
  const start = Math.atan2(from.y - cy, from.x - cx);
  const turn = 4 * Math.atan(from.bulge);
  const along = from.bulge > 0 ? wrapped(angle - start) : wrapped(start - angle);
  if (along <= Math.abs(turn)) return Math.abs(Math.hypot(point.x - cx, point.y - cy) - radius);
  return Math.min(Math.hypot(point.x - from.x, point.y - from.y), Math.hypot(point.x - to.x, point.y - to.y));
}

function distanceToLine(point: Point, from: Point, to: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / square;
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(point.x - from.x - t * dx, point.y - from.y - t * dy);
}

/** An angle brought to 0 … 2π. */
function wrapped(angle: number): number {
  const turn = 2 * Math.PI;
  return ((angle % turn) + turn) % turn;
}
