import type { Point } from '../geometry/contour';

/**
 * The radius of an arc for a program, in whole steps of the number format; null where it does not say the same arc.
 * `to` is the arc's end seen from its start, in steps already rounded.
 *
 * Two arcs have the same ends and radius, so a half turn or more is never written by R. Towards a half turn the
 * radius says less and less about the arc: it is taken only where the arc's height comes out within one step.
 */
export function radiusWord(to: Point, bulge: number): number | null {
  if (Math.abs(bulge) >= 1) return null;
  const chord = Math.hypot(to.x, to.y);
  const height = (Math.abs(bulge) * chord) / 2;
  const radius = Math.round((chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)));
  // From the middle of the chord to the centre; a radius rounded below half the chord has none.
  const lift = Math.sqrt(radius * radius - (chord * chord) / 4);
  return Math.abs(radius - lift - height) <= 1 ? radius : null;
}
