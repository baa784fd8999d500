import type { Corners } from './corners';
import { crossingRoom, crossSegments } from './cross-segments';
import { angleOnArc, directionAt } from './along-segment';
import { emptyTable, int, num, type SegmentTable } from './segment-table';
import { tolerance } from './tolerance';
import * as portable from './portable-math';

/** The elements of a raw offset, and which of them came from each segment of the source. */
export interface RawOffset {
  readonly table: SegmentTable;
  /** The segment's parallel; negative where it has none. */
  readonly parallel: Int32Array;
  /** The arc about the segment's end; -1 where there is none. */
  readonly join: Int32Array;
  /** The segment that each element came from. */
  readonly sourceOf: Int32Array;
  /** Elements from here on are arcs about corners. */
  readonly firstJoin: number;
  /** 1 for an element that runs tangent into the next one. */
  readonly smooth: Uint8Array;
}

/**
 * The parallels of all segments at a distance to the right of travel (negative: to the left), and an arc about every
 * corner that opens towards that side. Neighbours that share an end are linked by `next`; neighbours that cross are
 * trimmed to their crossing and linked; all else is left dangling for the arrangement to settle. Arcs that would turn
 * inside out have no parallel. O(n).
 */
export function rawOffset(source: SegmentTable, corners: Corners, distance: number): RawOffset {
  // Some room behind them for the pieces that the arrangement cuts.
  const raw = emptyTable(Math.ceil(1.5 * source.count) + openCorners(corners, distance));
  const parallel = new Int32Array(source.count);
  const join = new Int32Array(source.count).fill(-1);
  const sourceOf = new Int32Array(raw.x0.length);
  for (let i = 0; i < source.count; i++) {
    const element = addParallel(source, corners, i, distance, raw);
    parallel[i] = element;
    if (element >= 0) sourceOf[element] = i;
  }
  const firstJoin = raw.count;
  const smooth = new Uint8Array(raw.x0.length);
  const afterPoint = new Int32Array(source.count).fill(vanished);
  const link = (from: number, to: number): void => {
    if (from >= 0) raw.next[from] = to;
    else if (from <= firstPoint) afterPoint[firstPoint - from] = to;
  };
  for (let i = 0; i < source.count; i++) {
    const k = int(source.next, i);
    if (k < 0) continue;
    const from = int(parallel, i);
    const to = int(parallel, k);
    const bulge = num(corners.bulge, i);
    if (isSmooth(bulge, distance)) {
      link(from, to);
      if (from >= 0 && to >= 0) smooth[from] = 1;
    } else if (bulge * distance > 0) {
      const arc = addJoin(source, corners, i, k, distance, raw);
      join[i] = arc;
      sourceOf[arc] = i;
      link(from, arc);
      link(arc, to);
    } else if (from >= 0 && to >= 0) {
      if (num(raw.radius, from) === 0 && num(raw.radius, to) === 0)
        trimLines(raw, from, to, corners, i, k, distance);
      else trimToCrossing(raw, from, to, bulge);
    }
  }
  for (let e = 0; e < raw.count; e++) {
    let next = int(raw.next, e);
    while (next <= firstPoint) next = int(afterPoint, firstPoint - next);
    raw.next[e] = next;
  }
  return { table: raw, parallel, join, sourceOf, firstJoin, smooth };
}

/**
 * What a segment may have instead of a parallel: nothing, or a mere point. A point stands in the chain of links while
 * it grows, as `firstPoint` − segment, and is skipped at the end: its neighbours meet there.
 */
const vanished = -1;
const firstPoint = -2;

/** Whether the parallels' ends at a corner are one point: its turn, four times its bulge, times the distance. */
const isSmooth = (bulge: number, distance: number): boolean =>
  Math.abs(4 * bulge * distance) <= tolerance.samePoint;

function openCorners({ bulge }: Corners, distance: number): number {
  let count = 0;
  for (let i = 0; i < bulge.length; i++) {
    const b = num(bulge, i);
    if (b * distance > 0 && !isSmooth(b, distance)) count++;
  }
  return count;
}

/** Adds the parallel of one segment and returns its index, or that the arc vanished or became a point. */
function addParallel(
  source: SegmentTable,
  { startX, startY, endX, endY }: Corners,
  i: number,
  distance: number,
  raw: SegmentTable,
): number {
  const r = num(source.radius, i);
  const bulge = num(source.bulge, i);
  const radius = bulge > 0 ? r + distance : r - distance;
  if (r > 0 && radius <= tolerance.vanishingRadius) {
    return radius >= -tolerance.vanishingRadius ? firstPoint - i : vanished;
  }
  const e = raw.count++;
  raw.x0[e] = num(source.x0, i) + num(startX, i) * distance;
  raw.y0[e] = num(source.y0, i) + num(startY, i) * distance;
  raw.x1[e] = num(source.x1, i) + num(endX, i) * distance;
  raw.y1[e] = num(source.y1, i) + num(endY, i) * distance;
  if (r > 0) {
    raw.bulge[e] = bulge;
    raw.cx[e] = num(source.cx, i);
    raw.cy[e] = num(source.cy, i);
    raw.radius[e] = radius;
  }
  return e;
}

/** The arc about the corner from segment i to segment k, from the end of the one's parallel to the start of the other's. */
function addJoin(
  source: SegmentTable,
  { startX, startY, endX, endY, bulge }: Corners,
  i: number,
  k: number,
  distance: number,
  raw: SegmentTable,
): number {
  const x = num(source.x1, i);
  const y = num(source.y1, i);
  const e = raw.count++;
  raw.x0[e] = x + num(endX, i) * distance;
  raw.y0[e] = y + num(endY, i) * distance;
  raw.x1[e] = x + num(startX, k) * distance;
  raw.y1[e] = y + num(startY, k) * distance;
  raw.bulge[e] = num(bulge, i);
  raw.cx[e] = x;
  raw.cy[e] = y;
  raw.radius[e] = Math.abs(distance);
  return e;
}

/**
 * Trims two parallel lines at a corner that closes, each by the distance times the tangent of half the turn: what is
 * cut off is nearer to the other one's source than the distance. Where one is shorter than that nothing is done.
 */
function trimLines(
  raw: SegmentTable,
  from: number,
  to: number,
  { startX, startY, endX, endY, bulge }: Corners,
  i: number,
  k: number,
  distance: number,
): void {
  const b = num(bulge, i);
  const cut = Math.abs((2 * b * distance) / (1 - b * b));
  // A normal to the right turned by a quarter to the left is the direction of travel.
  const x = num(raw.x1, from) + num(endY, i) * cut;
  const y = num(raw.y1, from) - num(endX, i) * cut;
  const before = (y - num(raw.y0, from)) * num(endX, i) - (x - num(raw.x0, from)) * num(endY, i);
  const after = (num(raw.y1, to) - y) * num(startX, k) - (num(raw.x1, to) - x) * num(startY, k);
  if (!(before > tolerance.samePoint && after > tolerance.samePoint)) return;
  raw.x1[from] = x;
  raw.y1[from] = y;
  raw.x0[to] = x;
  raw.y0[to] = y;
  raw.next[from] = to;
}

/**
 * Trims two neighbours at a corner that closes to their one crossing, where the first goes over to the far side of
 * the second: what is cut off is nearer to the other one's source than the distance. Any other case is left alone.
 */
function trimToCrossing(raw: SegmentTable, from: number, to: number, turn: number): void {
  if (crossSegments(raw, from, raw, to, crossing) !== 1) return;
  const x = num(crossing, 0);
  const y = num(crossing, 1);
  directionAt(raw, from, x, y, arrive);
  directionAt(raw, to, x, y, leave);
  const cross = num(arrive, 0) * num(leave, 1) - num(arrive, 1) * num(leave, 0);
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

/** Room for one pair at a time, so that none is made for each. */
const crossing = new Float64Array(crossingRoom);
const arrive = new Float64Array(2);
const leave = new Float64Array(2);

/** Sine of the angle below which a crossing is too flat to trim by; the arrangement settles it instead. */
const safeCrossing = 0.001;

function isPoint(xs: Float64Array, ys: Float64Array, i: number, x: number, y: number): boolean {
  return Math.abs(num(xs, i) - x) <= tolerance.samePoint && Math.abs(num(ys, i) - y) <= tolerance.samePoint;
}

/** Bulge of the part of a segment's carrier between two points on it. */
function partBulge(table: SegmentTable, i: number, x0: number, y0: number, x1: number, y1: number): number {
  if (num(table.radius, i) === 0) return 0;
  return portable.tan(angleOnArc(table, i, x0, y0, x1, y1) / 4);
}
