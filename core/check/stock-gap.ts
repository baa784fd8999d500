import type { Contour, Point } from '../geometry/contour';
import { leastDistance } from '../geometry/least-distance';
import { nearestSegment, type SegmentIndex } from '../geometry/segment-index';
import { pointAlong } from '../geometry/along-segment';
import { num, tableOfRegion } from '../geometry/segment-table';
import { windingAt } from '../geometry/winding';

export interface StockGap {
  /** Least distance, mm; negative by how deep the stock reaches into the other member. */
  readonly least: number;
  readonly leastAt: Point;
}

/**
 * The gap between a piece of stock and the other member, whose boundary is `other` and on whose free side (outside a
 * punch, inside a die opening) the stock has to stay. Exact while they do not overlap; the depth of an overlap is the
 * deepest of the points looked at, sixteen to a segment.
 */
export function stockGap(outline: Contour, other: SegmentIndex, free: 'outside' | 'inside'): StockGap {
  const table = tableOfRegion([outline]);
  const at = new Float64Array(2);
  let depth = 0;
  let deepest: Point | null = null;
  for (let i = 0; i < table.count; i++) {
    for (let k = 0; k < looks; k++) {
      pointAlong(table, i, k / looks, at);
      const x = num(at, 0);
      const y = num(at, 1);
      if (windingAt(other, x, y) > 0 === (free === 'inside')) continue;
      const { distance } = nearestSegment(other, x, y);
      if (distance <= depth) continue;
      depth = distance;
      deepest = { x, y };
    }
  }
  if (deepest) return { least: -depth, leastAt: deepest };
  const { distance, at: leastAt } = leastDistance(table, other);
  return { least: distance, leastAt };
}

const looks = 16;
