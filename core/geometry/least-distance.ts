import type { Point } from './contour';
import type { SegmentIndex } from './segment-index';
import {
  isBesideArc,
  outsideArc,
  num,
  segmentBoxes,
  squaredDistance,
  type SegmentTable,
} from './segment-table';

/**
 * The least distance between two sets of segments that do not cross, mm, and the place on the first set. Exact: two
 * segments are nearest at an end of one or on a common normal through an arc's centre. Infinity where either is empty.
 */
export function leastDistance(table: SegmentTable, other: SegmentIndex): { distance: number; at: Point } {
  const search: Search = { best: Infinity, x: 0, y: 0 };
  const boxes = segmentBoxes(table);
  for (let i = 0; i < table.count; i++) {
    if (search.best === Infinity)
      for (let j = 0; j < other.table.count; j++) nearestOfPair(table, i, other.table, j, search);
    const room = Math.sqrt(search.best);
    other.tree?.search(
      num(boxes, 4 * i) - room,
      num(boxes, 4 * i + 1) - room,
      num(boxes, 4 * i + 2) + room,
      num(boxes, 4 * i + 3) + room,
      (j) => {
        nearestOfPair(table, i, other.table, j, search);
        return false;
      },
    );
  }
  return { distance: Math.sqrt(search.best), at: { x: search.x, y: search.y } };
}

/** Least squared distance so far and its place on the first set. */
interface Search {
  best: number;
  x: number;
  y: number;
}

function nearestOfPair(a: SegmentTable, i: number, b: SegmentTable, j: number, search: Search): void {
  tryPoint(num(a.x0, i), num(a.y0, i), b, j, search);
  tryPoint(num(a.x1, i), num(a.y1, i), b, j, search);
  tryFootOf(num(b.x0, j), num(b.y0, j), a, i, b, j, search);
  tryFootOf(num(b.x1, j), num(b.y1, j), a, i, b, j, search);
  if (num(b.radius, j) > 0) tryFootOf(num(b.cx, j), num(b.cy, j), a, i, b, j, search);
  // A common normal of a's arc and b runs through the arc's centre and b's foot of it.
  if (num(a.radius, i) > 0) {
    const cx = num(a.cx, i);
    const cy = num(a.cy, i);
    const foot = footOn(b, j, cx, cy);
    if (foot) tryFootOf(foot.x, foot.y, a, i, b, j, search);
  }
}

/** Tries the feet on segment i of a point of segment j (or of its arc's centre). */
function tryFootOf(
  x: number,
  y: number,
  a: SegmentTable,
  i: number,
  b: SegmentTable,
  j: number,
  search: Search,
): void {
  const foot = footOn(a, i, x, y);
  if (foot) tryPoint(foot.x, foot.y, b, j, search);
}

function tryPoint(x: number, y: number, b: SegmentTable, j: number, search: Search): void {
  const d = squaredDistance(b, j, x, y);
  if (d >= search.best) return;
  search.best = d;
  search.x = x;
  search.y = y;
}

/** The foot of a point on a segment's inside; null where it falls beyond the ends (the ends are tried anyway). */
function footOn(table: SegmentTable, i: number, x: number, y: number): Point | null {
  const x0 = num(table.x0, i);
  const y0 = num(table.y0, i);
  const r = num(table.radius, i);
  if (r === 0) {
    const dx = num(table.x1, i) - x0;
    const dy = num(table.y1, i) - y0;
    const t = ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy);
    return t > 0 && t < 1 ? { x: x0 + t * dx, y: y0 + t * dy } : null;
  }
  const cx = num(table.cx, i);
  const cy = num(table.cy, i);
  const length = Math.hypot(x - cx, y - cy);
  if (length === 0 || !isBesideArc(table, i, x, y)) return null;
  // From the centre or from the point, whichever is nearer to the foot and so has its digits.
  const off = outsideArc(table, i, x, y);
  return Math.abs(off) < r
    ? { x: x - ((x - cx) / length) * off, y: y - ((y - cy) / length) * off }
    : { x: cx + ((x - cx) / length) * r, y: cy + ((y - cy) / length) * r };
}
