import { addMeeting } from './add-meeting';
import { meetCircle, root } from './meet-circle';
import { isBesideArc, num, outsideArc, type SegmentTable } from './segment-table';

/**
 * Adds the inner crossings of two segments of which at least one is an arc with its centre far away, and returns how
 * many points there are then. Everything is reckoned from an arc's start: the circle through it with its centre at −s is
 * |v|² + 2 v·s = 0, whose coefficients keep the digits near the arc. Constant time, no allocation.
 */
export function crossFlatArc(
  a: SegmentTable,
  i: number,
  b: SegmentTable,
  j: number,
  out: Float64Array,
  count: number,
  samePoint: number,
): number {
  // Two carriers cross twice at most: with both ends of one on the other, those are the places.
  if (hasEndsOn(a, i, b, j, samePoint) || hasEndsOn(b, j, a, i, samePoint)) return count;
  const ra = num(a.radius, i);
  const rb = num(b.radius, j);
  if (ra === 0) return crossFlatArcAndLine(b, j, a, i, out, count);
  if (rb === 0) return crossFlatArcAndLine(a, i, b, j, out, count);
  return ra <= rb ? crossTwoArcs(a, i, b, j, out, count) : crossTwoArcs(b, j, a, i, out, count);
}

function hasEndsOn(a: SegmentTable, i: number, b: SegmentTable, j: number, samePoint: number): boolean {
  return (
    offCarrier(b, j, num(a.x0, i), num(a.y0, i)) <= samePoint &&
    offCarrier(b, j, num(a.x1, i), num(a.y1, i)) <= samePoint
  );
}

/** Distance from a point to the line or circle that a segment lies on, mm. */
function offCarrier(table: SegmentTable, i: number, x: number, y: number): number {
  if (num(table.radius, i) > 0) return Math.abs(outsideArc(table, i, x, y));
  const dx = num(table.x1, i) - num(table.x0, i);
  const dy = num(table.y1, i) - num(table.y0, i);
  const cross = (x - num(table.x0, i)) * dy - (y - num(table.y0, i)) * dx;
  return Math.abs(cross) / Math.sqrt(dx * dx + dy * dy);
}

function crossFlatArcAndLine(
  arc: SegmentTable,
  i: number,
  line: SegmentTable,
  j: number,
  out: Float64Array,
  before: number,
): number {
  const px = num(line.x0, j);
  const py = num(line.y0, j);
  const ux = num(line.x1, j) - px;
  const uy = num(line.y1, j) - py;
  const squared = ux * ux + uy * uy;
  let count = before;
  const roots = meetCircle(arc, i, px - num(arc.x0, i), py - num(arc.y0, i), ux, uy, squared);
  for (let k = 0; k < roots; k++) {
    const t = num(root, k);
    if (t <= 0 || t >= 1) continue;
    const x = px + t * ux;
    const y = py + t * uy;
    if (isBesideArc(arc, i, x, y)) count = addMeeting(out, count, x, y);
  }
  return count;
}

/** The line through both crossings of two circles is where their equations agree; arc i has the smaller radius. */
function crossTwoArcs(
  a: SegmentTable,
  i: number,
  b: SegmentTable,
  j: number,
  out: Float64Array,
  before: number,
): number {
  const ax = num(a.x0, i);
  const ay = num(a.y0, i);
  const dx = num(b.x0, j) - ax;
  const dy = num(b.y0, j) - ay;
  const sx = num(b.x0, j) - num(b.cx, j);
  const sy = num(b.y0, j) - num(b.cy, j);
  const nx = ax - num(a.cx, i) + dx - sx;
  const ny = ay - num(a.cy, i) + dy - sy;
  const squared = nx * nx + ny * ny;
  if (squared === 0) return before;
  const foot = ((dx * dx + dy * dy) / 2 - dx * sx - dy * sy) / squared;
  const size = Math.sqrt(squared);
  const ux = -ny / size;
  const uy = nx / size;
  let count = before;
  const roots = meetCircle(a, i, foot * nx, foot * ny, ux, uy, 1);
  for (let k = 0; k < roots; k++) {
    const t = num(root, k);
    const x = ax + foot * nx + t * ux;
    const y = ay + foot * ny + t * uy;
    if (isBesideArc(a, i, x, y) && isBesideArc(b, j, x, y)) count = addMeeting(out, count, x, y);
  }
  return count;
}
