import { crossingRoom, crossSegments } from './cross-segments';
import {
  addArc,
  addSegment,
  angleBetween,
  directionAt,
  emptyTable,
  int,
  num,
  type SegmentTable,
} from './segment-table';
import { tolerance } from './tolerance';

/** The elements of a raw offset, and which of them came from each segment of the source. */
export interface RawOffset {
  readonly table: SegmentTable;
  /** The segment's parallel; negative where it has none. */
  readonly parallel: Int32Array;
  /** The arc about the segment's end; -1 where there is none. */
  readonly join: Int32Array;
  /** Elements from here on are arcs about corners. */
  readonly firstJoin: number;
}

/**
 * The parallels of all segments at a distance to the right of travel (negative: to the left), and an arc about every
 * corner that opens towards that side. Neighbours that share an end are linked by `next`; neighbours that cross are
 * trimmed to their crossing and linked; all else is left dangling for the arrangement to settle. Arcs that would turn
 * inside out have no parallel. O(n).
 */
export function rawOffset(source: SegmentTable, distance: number): RawOffset {
  const raw = emptyTable(2 * source.count);
  const parallel = new Int32Array(source.count);
  const join = new Int32Array(source.count).fill(-1);
  for (let i = 0; i < source.count; i++) parallel[i] = addParallel(source, i, distance, raw);
  const firstJoin = raw.count;
  const afterPoint = new Int32Array(source.count).fill(vanished);
  const link = (from: number, to: number): void => {
    if (from >= 0) raw.next[from] = to;
    else if (from <= firstPoint) afterPoint[firstPoint - from] = to;
  };
  const arrive = new Float64Array(2);
  const leave = new Float64Array(2);
  const out = new Float64Array(crossingRoom);
  for (let i = 0; i < source.count; i++) {
    const k = int(source.next, i);
    if (k < 0) continue;
    const x = num(source.x1, i);
    const y = num(source.y1, i);
    directionAt(source, i, x, y, arrive);
    directionAt(source, k, x, y, leave);
    const turn = turnAt(source, i, k, arrive, leave);
    const from = int(parallel, i);
    const to = int(parallel, k);
    if (Math.abs(turn * distance) <= tolerance.samePoint) link(from, to);
    else if (turn * distance > 0) {
      const arc = addJoin(raw, x, y, arrive, leave, turn, distance);
      join[i] = arc;
      link(from, arc);
      link(arc, to);
    } else if (from >= 0 && to >= 0) trimToCrossing(raw, from, to, turn, out);
  }
  for (let e = 0; e < raw.count; e++) {
    let next = int(raw.next, e);
    while (next <= firstPoint) next = int(afterPoint, firstPoint - next);
    raw.next[e] = next;
  }
  return { table: raw, parallel, join, firstJoin };
}

/**
 * What a segment may have instead of a parallel: nothing, or a mere point. A point stands in the chain of links while
 * it grows, as `firstPoint` − segment, and is skipped at the end: its neighbours meet there.
 */
const vanished = -1;
const firstPoint = -2;

/** Adds the parallel of one segment and returns its index, or that the arc vanished or became a point. */
function addParallel(source: SegmentTable, i: number, distance: number, raw: SegmentTable): number {
  const x0 = num(source.x0, i);
  const y0 = num(source.y0, i);
  const x1 = num(source.x1, i);
  const y1 = num(source.y1, i);
  const r = num(source.radius, i);
  if (r === 0) {
    const length = Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
    const nx = ((y1 - y0) / length) * distance;
    const ny = (-(x1 - x0) / length) * distance;
    return addSegment(raw, x0 + nx, y0 + ny, x1 + nx, y1 + ny, 0);
  }
  const bulge = num(source.bulge, i);
  const radius = bulge > 0 ? r + distance : r - distance;
  if (radius <= tolerance.vanishingRadius) {
    return radius >= -tolerance.vanishingRadius ? firstPoint - i : vanished;
  }
  const cx = num(source.cx, i);
  const cy = num(source.cy, i);
  const scale = radius / r;
  return addArc(
    raw,
    [cx + (x0 - cx) * scale, cy + (y0 - cy) * scale, cx + (x1 - cx) * scale, cy + (y1 - cy) * scale],
    bulge,
    [cx, cy, radius],
  );
}

/**
 * The turn at a corner, (−π, π], left positive. At a cusp the tangents do not tell which way it turns; the curvatures
 * do: the way back lies left of the way there where both bend right on balance.
 */
function turnAt(
  source: SegmentTable,
  i: number,
  k: number,
  arrive: Float64Array,
  leave: Float64Array,
): number {
  const turn = angleBetween(num(arrive, 0), num(arrive, 1), num(leave, 0), num(leave, 1));
  if (Math.abs(turn) < Math.PI - tolerance.tangentAngle) return turn;
  return bend(source, i) + bend(source, k) > 0 ? -Math.PI : Math.PI;
}

function bend(table: SegmentTable, i: number): number {
  const r = num(table.radius, i);
  return r === 0 ? 0 : Math.sign(num(table.bulge, i)) / r;
}

/** The arc about a corner from the parallel that ends there to the one that begins there. */
function addJoin(
  raw: SegmentTable,
  x: number,
  y: number,
  arrive: Float64Array,
  leave: Float64Array,
  turn: number,
  distance: number,
): number {
  return addArc(
    raw,
    [
      x + num(arrive, 1) * distance,
      y - num(arrive, 0) * distance,
      x + num(leave, 1) * distance,
      y - num(leave, 0) * distance,
    ],
    Math.tan(turn / 4),
    [x, y, Math.abs(distance)],
  );
}

/**
 * Trims two neighbours at a corner that closes to their one crossing, where the first goes over to the far side of
 * the second: what is cut off is nearer to the other one's source than the distance. Any other case is left alone.
 */
function trimToCrossing(raw: SegmentTable, from: number, to: number, turn: number, out: Float64Array): void {
  if (crossSegments(raw, from, raw, to, out) !== 1) return;
  const x = num(out, 0);
  const y = num(out, 1);
  const a = new Float64Array(2);
  const b = new Float64Array(2);
  directionAt(raw, from, x, y, a);
  directionAt(raw, to, x, y, b);
  const cross = num(a, 0) * num(b, 1) - num(a, 1) * num(b, 0);
  if (Math.abs(cross) < safeCrossing || cross > 0 !== turn > 0) return;
  const bulgeFrom = partBulge(raw, from, num(raw.x0, from), num(raw.y0, from), x, y);
  const bulgeTo = partBulge(raw, to, x, y, num(raw.x1, to), num(raw.y1, to));
  if (isPoint(raw.x0, raw.y0, from, x, y) || isPoint(raw.x1, raw.y1, to, x, y)) return;
  raw.x1[from] = x;
  raw.y1[from] = y;
  raw.bulge[from] = bulgeFrom;
  raw.x0[to] = x;
  raw.y0[to] = y;
  raw.bulge[to] = bulgeTo;
  raw.next[from] = to;
}

/** Sine of the angle below which a crossing is too flat to trim by; the arrangement settles it instead. */
const safeCrossing = 0.001;

function isPoint(xs: Float64Array, ys: Float64Array, i: number, x: number, y: number): boolean {
  return Math.abs(num(xs, i) - x) <= tolerance.samePoint && Math.abs(num(ys, i) - y) <= tolerance.samePoint;
}

/** Bulge of the part of a segment's carrier between two points on it. */
function partBulge(table: SegmentTable, i: number, x0: number, y0: number, x1: number, y1: number): number {
  if (num(table.radius, i) === 0) return 0;
  const cx = num(table.cx, i);
  const cy = num(table.cy, i);
  return Math.tan(angleBetween(x0 - cx, y0 - cy, x1 - cx, y1 - cy) / 4);
}
