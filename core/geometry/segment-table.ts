import type { Chain, Contour, Region, Vertex } from './contour';
import { tolerance } from './tolerance';

/**
 * Many segments in columns: the working form of everything that touches each segment often. `radius` is 0 for a
 * line; `bulge` keeps the sense of an arc. No arc exceeds a half turn, so its chord tells its two halves of the
 * circle apart and no angle is ever needed to ask whether a point lies on it.
 */
export interface SegmentTable {
  count: number;
  readonly x0: Float64Array;
  readonly y0: Float64Array;
  readonly x1: Float64Array;
  readonly y1: Float64Array;
  readonly bulge: Float64Array;
  readonly cx: Float64Array;
  readonly cy: Float64Array;
  readonly radius: Float64Array;
  /** The segment that follows in the same loop; -1 where the chain ends. */
  readonly next: Int32Array;
}

/** All columns in one piece of memory, which is asked for in half the time of nine. */
export function emptyTable(capacity: number): SegmentTable {
  const memory = new ArrayBuffer(capacity * 68);
  const column = (k: number) => new Float64Array(memory, k * 8 * capacity, capacity);
  return {
    count: 0,
    x0: column(0),
    y0: column(1),
    x1: column(2),
    y1: column(3),
    bulge: column(4),
    cx: column(5),
    cy: column(6),
    radius: column(7),
    next: new Int32Array(memory, 64 * capacity, capacity).fill(-1),
  };
}

/** The same segments with room for more behind them: in the same columns where they are long enough. */
export function withRoom(table: SegmentTable, capacity: number): SegmentTable {
  if (table.x0.length >= capacity) return { ...table };
  const copy = emptyTable(capacity);
  copy.count = table.count;
  for (const name of ['x0', 'y0', 'x1', 'y1', 'bulge', 'cx', 'cy', 'radius', 'next'] as const) {
    copy[name].set(table[name].subarray(0, table.count));
  }
  return copy;
}

/** The segments of closed loops in order; segments shorter than the same-point tolerance are left out. */
export function tableOfRegion(region: Region): SegmentTable {
  const table = emptyTable(region.reduce((sum, contour) => sum + contour.length, 0));
  for (const contour of region) addLoop(table, contour);
  return table;
}

/** The segments of an open chain. */
export function tableOfChain(chain: Chain): SegmentTable {
  const table = emptyTable(Math.max(0, chain.length - 1));
  for (let i = 0; i + 1 < chain.length; i++) {
    const from = chain[i] as Vertex;
    const to = chain[i + 1] as Vertex;
    if (table.count > 0) table.next[table.count - 1] = table.count;
    addSegment(table, from.x, from.y, to.x, to.y, from.bulge);
  }
  return table;
}

/** Adds a segment and works out its circle; returns its index. */
export function addSegment(
  table: SegmentTable,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  bulge: number,
): number {
  const i = table.count++;
  table.x0[i] = x0;
  table.y0[i] = y0;
  table.x1[i] = x1;
  table.y1[i] = y1;
  if (bulge > tolerance.straightBulge || bulge < -tolerance.straightBulge) {
    const side = (1 - bulge * bulge) / (4 * bulge);
    const dx = x1 - x0;
    const dy = y1 - y0;
    table.bulge[i] = bulge;
    table.cx[i] = (x0 + x1) / 2 - side * dy;
    table.cy[i] = (y0 + y1) / 2 + side * dx;
    table.radius[i] = (Math.sqrt(dx * dx + dy * dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  }
  return i;
}

/** Adds an arc whose circle is known better than its bulge would tell. */
export function addArc(
  table: SegmentTable,
  ends: readonly [x0: number, y0: number, x1: number, y1: number],
  bulge: number,
  circle: readonly [cx: number, cy: number, radius: number],
): number {
  const i = table.count++;
  [table.x0[i], table.y0[i], table.x1[i], table.y1[i]] = ends as [number, number, number, number];
  table.bulge[i] = bulge;
  [table.cx[i], table.cy[i], table.radius[i]] = circle as [number, number, number];
  return i;
}

/** Whether the ray from an arc's centre through a point meets the arc (chord test, see SegmentTable). */
export function isBesideArc(table: SegmentTable, i: number, x: number, y: number): boolean {
  const cx = num(table.cx, i);
  const cy = num(table.cy, i);
  const x0 = num(table.x0, i);
  const y0 = num(table.y0, i);
  const x1 = num(table.x1, i);
  const y1 = num(table.y1, i);
  // Seen from the ends, not from the centre: where that is far away the difference of two products loses its digits.
  const fromStart = (x0 - cx) * (y - y0) - (y0 - cy) * (x - x0);
  const fromEnd = (x1 - cx) * (y - y1) - (y1 - cy) * (x - x1);
  return num(table.bulge, i) > 0 ? fromStart >= 0 && fromEnd <= 0 : fromStart <= 0 && fromEnd >= 0;
}

/** How far outside an arc's circle a point lies, mm; negative inside. */
export function outsideArc(table: SegmentTable, i: number, x: number, y: number): number {
  const r = num(table.radius, i);
  const cx = num(table.cx, i);
  const cy = num(table.cy, i);
  const fromCentre = Math.sqrt((x - cx) * (x - cx) + (y - cy) * (y - cy));
  return r < tolerance.flatRadius ? fromCentre - r : outsideCircle(table, i, x, y) / (fromCentre + r);
}

/**
 * The power of a point: the square of its distance from an arc's centre less that of the radius, mm², by way of the
 * arc's start, which keeps the digits near the arc however far away the centre is.
 */
export function outsideCircle(table: SegmentTable, i: number, x: number, y: number): number {
  const x0 = num(table.x0, i);
  const y0 = num(table.y0, i);
  const dx = x - x0;
  const dy = y - y0;
  return dx * dx + dy * dy + 2 * (dx * (x0 - num(table.cx, i)) + dy * (y0 - num(table.cy, i)));
}

/** Squared distance from a point to segment i, mm². */
export function squaredDistance(table: SegmentTable, i: number, x: number, y: number): number {
  const x0 = num(table.x0, i);
  const y0 = num(table.y0, i);
  const x1 = num(table.x1, i);
  const y1 = num(table.y1, i);
  const r = num(table.radius, i);
  if (r === 0) {
    const dx = x1 - x0;
    const dy = y1 - y0;
    const along = (x - x0) * dx + (y - y0) * dy;
    const whole = dx * dx + dy * dy;
    if (along > 0 && along < whole) {
      const cross = (x - x0) * dy - (y - y0) * dx;
      return (cross * cross) / whole;
    }
  } else if (isBesideArc(table, i, x, y)) {
    const off = outsideArc(table, i, x, y);
    return off * off;
  }
  const a = (x - x0) * (x - x0) + (y - y0) * (y - y0);
  const b = (x - x1) * (x - x1) + (y - y1) * (y - y1);
  return a < b ? a : b;
}

/** Boxes of all segments as four columns, arcs' bellies included. */
export function segmentBoxes(table: SegmentTable): Float64Array {
  const boxes = new Float64Array(table.count * 4);
  for (let i = 0; i < table.count; i++) {
    const x0 = num(table.x0, i);
    const y0 = num(table.y0, i);
    const x1 = num(table.x1, i);
    const y1 = num(table.y1, i);
    let minX = x0 < x1 ? x0 : x1;
    let maxX = x0 < x1 ? x1 : x0;
    let minY = y0 < y1 ? y0 : y1;
    let maxY = y0 < y1 ? y1 : y0;
    const r = num(table.radius, i);
    if (r >= tolerance.flatRadius) {
      // Nowhere farther from its chord than its height.
      const height = (Math.abs(num(table.bulge, i)) * Math.hypot(x1 - x0, y1 - y0)) / 2;
      minX -= height;
      maxX += height;
      minY -= height;
      maxY += height;
    } else if (r > 0) {
      const cx = num(table.cx, i);
      const cy = num(table.cy, i);
      // A point of the circle is on the arc where it lies on the arc's side of the chord: to the right of a left turn.
      const sense = num(table.bulge, i) > 0 ? 1 : -1;
      const dx = (x1 - x0) * sense;
      const dy = (y1 - y0) * sense;
      const centre = dx * (cy - y0) - dy * (cx - x0);
      // The ends stay inside by all their digits: the winding count compares them with a ray exactly.
      if (cx + r > maxX && centre - dy * r <= 0) maxX = cx + r;
      if (cx - r < minX && centre + dy * r <= 0) minX = cx - r;
      if (cy + r > maxY && centre + dx * r <= 0) maxY = cy + r;
      if (cy - r < minY && centre - dx * r <= 0) minY = cy - r;
    }
    boxes[4 * i] = minX;
    boxes[4 * i + 1] = minY;
    boxes[4 * i + 2] = maxX;
    boxes[4 * i + 3] = maxY;
  }
  return boxes;
}

/** A typed-array read inside its bounds: the compiler cannot know that, and a check here would cost the hot loops. */
export const num = (column: Float64Array, i: number): number => column[i] as number;
export const int = (column: Int32Array, i: number): number => column[i] as number;

function addLoop(table: SegmentTable, contour: Contour): void {
  const first = table.count;
  const start = contour[0];
  if (!start) return;
  let from: Vertex = start;
  for (let k = 1; k <= contour.length; k++) {
    const to = contour[k % contour.length] as Vertex;
    const dx = to.x - from.x;
    const dy = to.y - from.y;
    if (dx * dx + dy * dy <= tolerance.samePoint * tolerance.samePoint) {
      // A point-like segment has no direction: the next one starts where this one did.
      from = { x: from.x, y: from.y, bulge: to.bulge };
      continue;
    }
    addSegment(table, from.x, from.y, to.x, to.y, from.bulge);
    from = to;
  }
  const last = table.count - 1;
  if (last < first) return;
  // The ring closes exactly even where its last segment was left out.
  if (from !== start) {
    const x = num(table.x0, first);
    const y = num(table.y0, first);
    const bulge = num(table.bulge, last);
    table.count--;
    addSegment(table, num(table.x0, last), num(table.y0, last), x, y, bulge);
  }
  for (let i = first; i <= last; i++) table.next[i] = i === last ? first : i + 1;
}
