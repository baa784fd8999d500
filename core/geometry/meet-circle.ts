import { num, type SegmentTable } from './segment-table';
import { tolerance } from './tolerance';

/**
 * Where the line q + t·u, as seen from an arc's start, meets the arc's circle: writes t into `root` and returns how many
 * there are. A line that misses the circle by less than the tolerance touches it.
 */
export function meetCircle(
  arc: SegmentTable,
  i: number,
  qx: number,
  qy: number,
  ux: number,
  uy: number,
  squared: number,
): number {
  const sx = num(arc.x0, i) - num(arc.cx, i);
  const sy = num(arc.y0, i) - num(arc.cy, i);
  const constant = qx * qx + qy * qy + 2 * (qx * sx + qy * sy);
  const half = ux * (qx + sx) + uy * (qy + sy);
  const discriminant = half * half - squared * constant;
  if (discriminant <= 0) {
    root[0] = -half / squared;
    return -discriminant / (squared * 2 * num(arc.radius, i)) <= tolerance.onCurve ? 1 : 0;
  }
  // The sum that cannot cancel gives the far root; their product gives the near one.
  const sum = -half - Math.sign(half || 1) * Math.sqrt(discriminant);
  root[0] = constant / sum;
  root[1] = sum / squared;
  return 2;
}

/** What `meetCircle` found last: room for one pair at a time, so that none is made for each. */
export const root = new Float64Array(2);
