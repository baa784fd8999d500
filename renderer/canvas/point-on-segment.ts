import { arcOf } from '../../core/geometry/contour-measures';
import type { Point, Vertex } from '../../core/geometry/contour';

export interface PointedPoint extends Point {
  /** Direction of travel there, radians. */
  readonly heading: number;
}

/** The point at a share (0 … 1) of a segment's length, and the way the wire runs there. */
export function pointOnSegment(from: Vertex, to: Vertex, share: number): PointedPoint {
  if (from.bulge === 0) {
    return {
      x: from.x + (to.x - from.x) * share,
      y: from.y + (to.y - from.y) * share,
      heading: Math.atan2(to.y - from.y, to.x - from.x),
    };
  }
  const { cx, cy, radius } = arcOf(from, to);
  const angle = Math.atan2(from.y - cy, from.x - cx) + 4 * Math.atan(from.bulge) * share;
  return {
    x: cx + radius * Math.cos(angle),
    y: cy + radius * Math.sin(angle),
    heading: angle + (Math.sign(from.bulge) * Math.PI) / 2,
  };
}
