import type { Point } from './contour';
import { nearestSegment, type SegmentIndex } from './segment-index';
import { alongSegment, pointAlong } from './along-segment';
import { num } from './segment-table';
import { windingAt } from './winding';

/** A place on a boundary: the segment of the index's table, how far along it (0 its start, 1 its end), and where that is. */
export interface BoundaryPlace extends Point {
  readonly segment: number;
  readonly along: number;
  /** From the point that was asked about, mm. */
  readonly distance: number;
}

/** The place on the boundary nearest to a point; null where none is within `within`. Exact on lines and arcs. O(log n). */
export function nearestPoint(index: SegmentIndex, { x, y }: Point, within = Infinity): BoundaryPlace | null {
  const { segment, distance } = nearestSegment(index, x, y, within);
  return segment < 0 ? null : { ...footOn(index, segment, x, y), segment, distance };
}

/** Distance from a point to the boundary of a region, mm: positive inside, negative outside; -Infinity where there is none. */
export function signedDistance(index: SegmentIndex, { x, y }: Point): number {
  const { segment, distance } = nearestSegment(index, x, y);
  if (segment < 0) return -Infinity;
  return windingAt(index, x, y) > 0 ? distance : -distance;
}

function footOn(
  { table }: SegmentIndex,
  i: number,
  x: number,
  y: number,
): Point & { readonly along: number } {
  const start = { x: num(table.x0, i), y: num(table.y0, i), along: 0 };
  const end = { x: num(table.x1, i), y: num(table.y1, i), along: 1 };
  const along = alongSegment(table, i, x, y);
  const toStart = Math.hypot(x - start.x, y - start.y);
  const toEnd = Math.hypot(x - end.x, y - end.y);
  // Beyond an arc's ends the angle may say anything: the nearer end is the foot.
  if (!(along > 0 && along < 1)) return toStart <= toEnd ? start : end;
  const at = new Float64Array(2);
  pointAlong(table, i, along, at);
  return { x: num(at, 0), y: num(at, 1), along };
}
