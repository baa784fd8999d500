import type { Contour, Point, Vertex } from './contour';
import { arcOf } from './contour-measures';
import { tolerance } from './tolerance';

export interface Circle extends Point {
  readonly diameter: number;
}

/** The circle that a contour is, within the duplicate tolerance; null where it is none. */
export function circleOf(contour: Contour): Circle | null {
  const arcs = contour.map((from, i) =>
    from.bulge === 0 ? null : arcOf(from, contour[(i + 1) % contour.length] as Vertex),
  );
  const [first] = arcs;
  if (!first) return null;
  const isOne = arcs.every(
    (arc) =>
      arc !== null &&
      Math.hypot(arc.cx - first.cx, arc.cy - first.cy) <= tolerance.duplicate &&
      Math.abs(arc.radius - first.radius) <= tolerance.duplicate,
  );
  return isOne ? { x: first.cx, y: first.cy, diameter: 2 * first.radius } : null;
}
