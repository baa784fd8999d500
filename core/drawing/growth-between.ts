import type { Point } from '../geometry/contour';
import type { SegmentIndex } from '../geometry/segment-index';
import { directionAt } from '../geometry/along-segment';
import { num, squaredDistance } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';

/**
 * By how much the distance between two points of a counter-clockwise contour grows for each mm that the contour grows on
 * each side: 2 across it, −2 across a gap in it, 0 between edges that face the same way. `along` is the direction that
 * the distance is taken in (any length). At a corner the edge more square to that direction counts, since that is the one
 * a dimension means.
 */
export function growthBetween(index: SegmentIndex, from: Point, to: Point, along: Point): number {
  return facing(index, to, along) - facing(index, from, along);
}

/** The part of the contour's outward direction at a point that lies in a direction: −1 to 1; 0 off the contour. */
export function facing({ table, tree }: SegmentIndex, { x, y }: Point, along: Point): number {
  const near = tolerance.gap;
  const length = Math.hypot(along.x, along.y);
  const way = new Float64Array(2);
  let most = 0;
  tree?.search(x - near, y - near, x + near, y + near, (i) => {
    if (squaredDistance(table, i, x, y) > near * near) return false;
    directionAt(table, i, x, y, way);
    // Outside is on the right of a counter-clockwise way.
    const outward = (num(way, 1) * along.x - num(way, 0) * along.y) / length;
    if (Math.abs(outward) > Math.abs(most)) most = outward;
    return false;
  });
  return most;
}
