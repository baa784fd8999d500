import type { Contour, Region, Vertex } from './contour';
import { eachSegment } from './contour-measures';

/**
 * How often a contour runs round a point, counter-clockwise positive: 1 inside a counter-clockwise contour, 0 outside.
 * Points on the contour itself fall to either side.
 *
 * The chord polygon by crossings of the ray to +x (half-open in y, so that vertices count once), corrected by one for
 * every arc whose cap (the area between chord and arc) holds the point. O(n).
 */
export function windingNumber(contour: Contour, x: number, y: number): number {
  let winding = 0;
  eachSegment(contour, (from, to) => {
    const side = (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
    if (from.y <= y ? to.y > y : to.y <= y) {
      if (to.y > from.y ? side > 0 : side < 0) winding += to.y > from.y ? 1 : -1;
    }
    const b = from.bulge;
    if (b === 0) return;
    if (b > 0 ? side > 0 : side < 0) return;
    // In the cap: inside the circle, on the arc's side of the chord.
    const offset = (1 - b * b) / (4 * b);
    const cx = (from.x + to.x) / 2 - offset * (to.y - from.y);
    const cy = (from.y + to.y) / 2 + offset * (to.x - from.x);
    const squared = (from.x - cx) ** 2 + (from.y - cy) ** 2;
    if ((x - cx) ** 2 + (y - cy) ** 2 < squared) {
      if (side !== 0 || capHoldsChord(from, to)) winding += b > 0 ? 1 : -1;
    }
  });
  return winding;
}

/** Whether a point lies inside a region (outer loops counter-clockwise, holes clockwise). */
export const isInside = (region: Region, x: number, y: number): boolean =>
  region.reduce((sum, contour) => sum + windingNumber(contour, x, y), 0) > 0;

/**
 * A point exactly on a chord: the crossing rule above has put it to the right of an upward chord, to the left of a
 * downward one and above a level one, so it belongs to the cap only where the cap lies on that side.
 */
function capHoldsChord(from: Vertex, to: Vertex): boolean {
  const right = to.y > from.y || (to.y === from.y && to.x < from.x);
  return right ? from.bulge > 0 : from.bulge < 0;
}
