import type { Chain, Contour, Point, Vertex } from './contour';
import { eachSegment, segmentLength } from './contour-measures';
import { alongSegment, directionAt, pointAlong } from './along-segment';
import { addSegment, emptyTable, num, squaredDistance } from './segment-table';
import { tolerance } from './tolerance';
import * as portable from './portable-math';

/** A place on a closed contour: a segment and how far along it (0 its start, 1 its end). */
export interface LoopPosition {
  readonly segment: number;
  readonly along: number;
}

/** The place on a contour nearest to a point, and its distance, mm. O(n). */
export function nearestPosition(
  contour: Contour,
  point: Point,
): LoopPosition & { readonly distance: number } {
  const table = tableOf(contour);
  let segment = 0;
  let best = Infinity;
  for (let i = 0; i < table.count; i++) {
    const d = squaredDistance(table, i, point.x, point.y);
    if (d < best) {
      best = d;
      segment = i;
    }
  }
  const along = Math.min(1, Math.max(0, alongSegment(table, segment, point.x, point.y)));
  const end = nearerEnd(table, segment, point, best);
  return { segment, along: end ?? along, distance: Math.sqrt(best) };
}

/** The place a length along the contour from another, forwards; lengths beyond the whole go round again. mm. */
export function positionAfter(contour: Contour, from: LoopPosition, length: number): LoopPosition {
  const lengths = contour.map((v, i) => segmentLength(v, contour[(i + 1) % contour.length] as Vertex));
  const whole = lengths.reduce((a, b) => a + b, 0);
  let left = (((length % whole) + whole) % whole) + from.along * (lengths[from.segment] as number);
  let segment = from.segment;
  while (left > (lengths[segment] as number)) {
    left -= lengths[segment] as number;
    segment = (segment + 1) % contour.length;
  }
  const own = lengths[segment] as number;
  return { segment, along: own === 0 ? 0 : left / own };
}

/** The point at a place. */
export function pointAt(contour: Contour, { segment, along }: LoopPosition): Point {
  const at = new Float64Array(2);
  pointAlong(segmentOf(contour, segment), 0, along, at);
  return { x: num(at, 0), y: num(at, 1) };
}

/** Unit direction of travel at a place. */
export function directionOf(contour: Contour, position: LoopPosition): Point {
  const table = segmentOf(contour, position.segment);
  const p = pointAt(contour, position);
  const u = new Float64Array(2);
  directionAt(table, 0, p.x, p.y, u);
  return { x: num(u, 0), y: num(u, 1) };
}

/** The run of a contour from one place forwards to another; all the way round where they are the same place. */
export function chainBetween(contour: Contour, from: LoopPosition, to: LoopPosition): Chain {
  const n = contour.length;
  const ahead = to.segment === from.segment && to.along > from.along;
  const steps = ahead ? 0 : (to.segment - from.segment + n) % n || n;
  const chain: Vertex[] = [];
  for (let k = 0; k <= steps; k++) {
    const segment = (from.segment + k) % n;
    const start = k === 0 ? from.along : 0;
    const end = k === steps ? to.along : 1;
    if (end <= start) continue;
    const bulge = (contour[segment] as Vertex).bulge;
    const at = pointAt(contour, { segment, along: start });
    chain.push({ ...at, bulge: bulge === 0 ? 0 : portable.tan(portable.atan(bulge) * (end - start)) });
  }
  chain.push({ ...pointAt(contour, to), bulge: 0 });
  return withoutPoints(chain);
}

/** Drops segments shorter than the same-point tolerance. */
function withoutPoints(chain: readonly Vertex[]): Chain {
  return chain.filter((v, i) => {
    const next = chain[i + 1];
    return !next || Math.hypot(next.x - v.x, next.y - v.y) > tolerance.samePoint;
  });
}

/** Every segment, point-like ones too, so that the table's indices are the contour's. */
function tableOf(contour: Contour) {
  const table = emptyTable(contour.length);
  eachSegment(contour, (from, to) => addSegment(table, from.x, from.y, to.x, to.y, from.bulge));
  return table;
}

function segmentOf(contour: Contour, segment: number) {
  const from = contour[segment] as Vertex;
  const to = contour[(segment + 1) % contour.length] as Vertex;
  const table = emptyTable(1);
  addSegment(table, from.x, from.y, to.x, to.y, from.bulge);
  return table;
}

/** 0 or 1 where the nearest point is an end: beyond an arc's end its angle does not tell. */
function nearerEnd(table: ReturnType<typeof tableOf>, i: number, point: Point, best: number): 0 | 1 | null {
  const start = (num(table.x0, i) - point.x) ** 2 + (num(table.y0, i) - point.y) ** 2;
  const end = (num(table.x1, i) - point.x) ** 2 + (num(table.y1, i) - point.y) ** 2;
  if (start <= best) return 0;
  return end <= best ? 1 : null;
}
