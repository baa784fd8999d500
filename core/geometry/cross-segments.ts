import { addMeeting } from './add-meeting';
import { crossFlatArc } from './cross-flat-arc';
import { isBesideArc, num, squaredDistance, type SegmentTable } from './segment-table';
import { tolerance } from './tolerance';

/** Room for the points of one pair: four touching ends and two crossings. */
export const crossingRoom = 12;

/**
 * Where two segments meet: writes x, y pairs into `out` and returns how many points there are.
 *
 * Two kinds of points: an end of one that lies on the other within the same-point tolerance (this covers overlapping
 * lines and arcs, whose common part always begins and ends at such an end), and a crossing inside both. Segments on
 * one carrier only touch. Constant time, no allocation.
 */
export function crossSegments(
  a: SegmentTable,
  i: number,
  b: SegmentTable,
  j: number,
  out: Float64Array,
  samePoint: number = tolerance.samePoint,
): number {
  let count = 0;
  const near = samePoint * samePoint;
  if (squaredDistance(b, j, num(a.x0, i), num(a.y0, i)) <= near)
    count = addMeeting(out, count, num(a.x0, i), num(a.y0, i));
  if (squaredDistance(b, j, num(a.x1, i), num(a.y1, i)) <= near)
    count = addMeeting(out, count, num(a.x1, i), num(a.y1, i));
  if (squaredDistance(a, i, num(b.x0, j), num(b.y0, j)) <= near)
    count = addMeeting(out, count, num(b.x0, j), num(b.y0, j));
  if (squaredDistance(a, i, num(b.x1, j), num(b.y1, j)) <= near)
    count = addMeeting(out, count, num(b.x1, j), num(b.y1, j));
  const ra = num(a.radius, i);
  const rb = num(b.radius, j);
  if (ra === 0 && rb === 0) return crossLines(a, i, b, j, out, count, samePoint);
  if (ra >= tolerance.flatRadius || rb >= tolerance.flatRadius)
    return crossFlatArc(a, i, b, j, out, count, samePoint);
  if (ra === 0) return crossLineAndArc(a, i, b, j, out, count);
  if (rb === 0) return crossLineAndArc(b, j, a, i, out, count);
  return crossArcs(a, i, b, j, out, count, samePoint);
}

function crossLines(
  a: SegmentTable,
  i: number,
  b: SegmentTable,
  j: number,
  out: Float64Array,
  count: number,
  samePoint: number,
): number {
  const px = num(a.x0, i);
  const py = num(a.y0, i);
  const ux = num(a.x1, i) - px;
  const uy = num(a.y1, i) - py;
  const qx = num(b.x0, j);
  const qy = num(b.y0, j);
  const vx = num(b.x1, j) - qx;
  const vy = num(b.y1, j) - qy;
  const cross = ux * vy - uy * vx;
  if (cross === 0) return count;
  // Both ends of one as good as on the other's carrier: they only touch, and where they cross is rounding.
  const fromA = (qx - px) * uy - (qy - py) * ux;
  const fromB = (qx - px) * vy - (qy - py) * vx;
  const nearA = samePoint * Math.sqrt(ux * ux + uy * uy);
  const nearB = samePoint * Math.sqrt(vx * vx + vy * vy);
  if (Math.abs(fromA) <= nearA && Math.abs(fromA - cross) <= nearA) return count;
  if (Math.abs(fromB) <= nearB && Math.abs(fromB - cross) <= nearB) return count;
  const s = fromB / cross;
  const t = fromA / cross;
  if (!(s > 0 && s < 1 && t > 0 && t < 1)) return count;
  return addMeeting(out, count, px + s * ux, py + s * uy);
}

function crossLineAndArc(
  line: SegmentTable,
  i: number,
  arc: SegmentTable,
  j: number,
  out: Float64Array,
  count: number,
): number {
  const px = num(line.x0, i);
  const py = num(line.y0, i);
  const ux = num(line.x1, i) - px;
  const uy = num(line.y1, i) - py;
  const cx = num(arc.cx, j);
  const cy = num(arc.cy, j);
  const r = num(arc.radius, j);
  const squared = ux * ux + uy * uy;
  const foot = ((cx - px) * ux + (cy - py) * uy) / squared;
  const off = ((cx - px) * uy - (cy - py) * ux) / Math.sqrt(squared);
  const size = Math.abs(off);
  if (size > r + tolerance.onCurve) return count;
  // (r − off)(r + off) keeps the digits where the line is nearly tangent.
  const half = size >= r ? 0 : Math.sqrt(((r - size) * (r + size)) / squared);
  for (let k = half === 0 ? 1 : -1; k <= 1; k += 2) {
    const t = foot + k * half;
    if (t <= 0 || t >= 1) continue;
    const x = px + t * ux;
    const y = py + t * uy;
    if (isBesideArc(arc, j, x, y)) count = addMeeting(out, count, x, y);
  }
  return count;
}

function crossArcs(
  a: SegmentTable,
  i: number,
  b: SegmentTable,
  j: number,
  out: Float64Array,
  count: number,
  samePoint: number,
): number {
  const ax = num(a.cx, i);
  const ay = num(a.cy, i);
  const ra = num(a.radius, i);
  const rb = num(b.radius, j);
  const dx = num(b.cx, j) - ax;
  const dy = num(b.cy, j) - ay;
  const d = Math.sqrt(dx * dx + dy * dy);
  if (d > ra + rb + tolerance.onCurve || d < Math.abs(ra - rb) - tolerance.onCurve) return count;
  if (d <= samePoint && Math.abs(ra - rb) <= samePoint) return count; // one carrier: only ends can touch
  if (d === 0) return count;
  // Distance from a's centre to the common chord, and half that chord by Heron's product, which keeps the digits
  // where the circles are nearly tangent.
  const foot = ((ra - rb) * (ra + rb)) / (2 * d) + d / 2;
  const product = (d + ra + rb) * (ra + rb - d) * (d + ra - rb) * (d - ra + rb);
  const half = product > 0 ? Math.sqrt(product) / (2 * d) : 0;
  const mx = ax + (foot * dx) / d;
  const my = ay + (foot * dy) / d;
  for (let k = half === 0 ? 1 : -1; k <= 1; k += 2) {
    const x = mx - (k * half * dy) / d;
    const y = my + (k * half * dx) / d;
    if (isBesideArc(a, i, x, y) && isBesideArc(b, j, x, y)) count = addMeeting(out, count, x, y);
  }
  return count;
}

/** True where the point is an end of the segment within the same-point tolerance: 0 its start, 1 its end, -1 neither. */
export function endAt(
  table: SegmentTable,
  i: number,
  x: number,
  y: number,
  samePoint: number = tolerance.samePoint,
): -1 | 0 | 1 {
  const near = samePoint * samePoint;
  if ((num(table.x0, i) - x) ** 2 + (num(table.y0, i) - y) ** 2 <= near) return 0;
  if ((num(table.x1, i) - x) ** 2 + (num(table.y1, i) - y) ** 2 <= near) return 1;
  return -1;
}
