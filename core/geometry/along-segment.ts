import { num, type SegmentTable } from './segment-table';
import * as portable from './portable-math';

/** Unit direction of travel at a point of segment i. */
export function directionAt(table: SegmentTable, i: number, x: number, y: number, into: Float64Array): void {
  const r = num(table.radius, i);
  if (r === 0) {
    const dx = num(table.x1, i) - num(table.x0, i);
    const dy = num(table.y1, i) - num(table.y0, i);
    const length = Math.sqrt(dx * dx + dy * dy);
    into[0] = dx / length;
    into[1] = dy / length;
    return;
  }
  const vx = x - num(table.cx, i);
  const vy = y - num(table.cy, i);
  const length = Math.sqrt(vx * vx + vy * vy) * (num(table.bulge, i) > 0 ? 1 : -1);
  into[0] = -vy / length;
  into[1] = vx / length;
}

/** How far along segment i a point on it lies: 0 at its start, 1 at its end; monotone, beyond both ends too. */
export function alongSegment(table: SegmentTable, i: number, x: number, y: number): number {
  const x0 = num(table.x0, i);
  const y0 = num(table.y0, i);
  if (num(table.radius, i) === 0) {
    const dx = num(table.x1, i) - x0;
    const dy = num(table.y1, i) - y0;
    return ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy);
  }
  return angleOnArc(table, i, x0, y0, x, y) / (4 * portable.atan(num(table.bulge, i)));
}

/** The signed angle at an arc's centre from one point of its circle to another, (−π, π]. */
export function angleOnArc(
  table: SegmentTable,
  i: number,
  fromX: number,
  fromY: number,
  x: number,
  y: number,
): number {
  const fx = fromX - num(table.cx, i);
  const fy = fromY - num(table.cy, i);
  // The sine from the way between the points: the centre may be far away.
  const cross = fx * (y - fromY) - fy * (x - fromX);
  return portable.atan2(cross, fx * (x - num(table.cx, i)) + fy * (y - num(table.cy, i)));
}

/** Point at a fraction of segment i. */
export function pointAlong(table: SegmentTable, i: number, fraction: number, into: Float64Array): void {
  const x0 = num(table.x0, i);
  const y0 = num(table.y0, i);
  const b = num(table.bulge, i);
  if (b === 0) {
    into[0] = x0 + (num(table.x1, i) - x0) * fraction;
    into[1] = y0 + (num(table.y1, i) - y0) * fraction;
    return;
  }
  const half = 2 * portable.atan(b) * fraction;
  const fx = x0 - num(table.cx, i);
  const fy = y0 - num(table.cy, i);
  // Turned by twice the half angle, as a step from the start: 1 − cos = 2 sin² of the half.
  const sin = portable.sin(half);
  const turned = 2 * sin * portable.cos(half);
  const back = 2 * sin * sin;
  into[0] = x0 - back * fx - turned * fy;
  into[1] = y0 - back * fy + turned * fx;
}
