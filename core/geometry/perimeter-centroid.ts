import type { Point, Region, Vertex } from './contour';
import { arcOf, eachSegment, segmentLength } from './contour-measures';
import * as portable from './portable-math';

/** Length of all boundaries and the point where it balances. */
export interface PerimeterCentroid extends Point {
  /** mm. */
  readonly length: number;
}

/**
 * Centroid of the boundary lines of a region, each length counting alike, mm. Exact: a line balances at its middle, an
 * arc of half angle a at r·sin(a)/a from its centre. Null where there is no length.
 */
export function perimeterCentroid(region: Region): PerimeterCentroid | null {
  const origin = region[0]?.[0];
  if (!origin) return null;
  let length = 0;
  let momentX = 0;
  let momentY = 0;
  for (const contour of region) {
    eachSegment(contour, (from, to) => {
      const own = segmentLength(from, to);
      const at = balanceOf(from, to);
      length += own;
      // Relative to the first vertex, so that a part far from the origin keeps its digits.
      momentX += own * (at.x - origin.x);
      momentY += own * (at.y - origin.y);
    });
  }
  return length > 0 ? { length, x: origin.x + momentX / length, y: origin.y + momentY / length } : null;
}

function balanceOf(from: Vertex, to: Vertex): Point {
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  if (from.bulge === 0) return middle;
  const { cx, cy } = arcOf(from, to);
  const half = 2 * portable.atan(Math.abs(from.bulge));
  // From the centre towards the arc's top, which lies bulge half chords to the right of the chord's middle.
  const top = {
    x: middle.x + (from.bulge * (to.y - from.y)) / 2,
    y: middle.y - (from.bulge * (to.x - from.x)) / 2,
  };
  const share = portable.sin(half) / half;
  return { x: cx + (top.x - cx) * share, y: cy + (top.y - cy) * share };
}
