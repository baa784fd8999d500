import type { Contour, Point, Vertex } from '../geometry/contour';
import { alongSegment, pointAlong } from '../geometry/along-segment';
import { num, squaredDistance } from '../geometry/segment-table';
import type { SegmentIndex } from '../geometry/segment-index';
import { tableOfChain } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import * as portable from '../geometry/portable-math';

/** A run of a ring between two places it was cut at. */
export interface RingRun {
  readonly vertices: readonly Vertex[];
  /** The places it runs from and to, by their index. */
  readonly from: number;
  readonly to: number;
}

/**
 * A ring cut at places on it, in the order it meets them; a place that it meets twice is cut twice. The index is that of
 * its segments in their order.
 */
export function cutRing(contour: Contour, index: SegmentIndex, places: readonly Point[]): readonly RingRun[] {
  const cuts = places.flatMap((place, p) => cutsAt(index, place, p));
  cuts.sort((a, b) => a.segment - b.segment || a.fraction - b.fraction);
  const distinct = cuts.filter((cut, i) => !isSameCut(contour, cut, cuts[i - 1]));
  const [first] = distinct;
  const last = distinct[distinct.length - 1];
  if (
    first &&
    last &&
    distinct.length > 1 &&
    isSameCut(contour, { ...first, segment: first.segment + contour.length }, last)
  )
    distinct.pop();
  return distinct.map((cut, i) => {
    const next = distinct[(i + 1) % distinct.length] as Cut;
    return { vertices: runBetween(index, contour, cut, next), from: cut.place, to: next.place };
  });
}

/** A point in the middle of a run, well away from its ends. */
export function middleOfRun({ vertices }: RingRun): Point {
  const table = tableOfChain(vertices);
  let longest = 0;
  let at = 0;
  for (let i = 0; i < table.count; i++) {
    const size = Math.hypot(num(table.x1, i) - num(table.x0, i), num(table.y1, i) - num(table.y0, i));
    if (size > longest) [longest, at] = [size, i];
  }
  const out = new Float64Array(2);
  // Off the middle by an odd share: the very middle of an edge is where other edges like to end.
  pointAlong(table, at, 0.4613, out);
  return { x: num(out, 0), y: num(out, 1) };
}

interface Cut {
  readonly segment: number;
  readonly fraction: number;
  readonly place: number;
}

function cutsAt({ table, tree }: SegmentIndex, { x, y }: Point, place: number): Cut[] {
  const near = tolerance.sameBoundary;
  const cuts: Cut[] = [];
  tree?.search(x - near, y - near, x + near, y + near, (i) => {
    if (squaredDistance(table, i, x, y) > near * near) return false;
    cuts.push({ segment: i, fraction: Math.max(0, Math.min(1, alongSegment(table, i, x, y))), place });
    return false;
  });
  return cuts;
}

/** The end of one segment and the start of the next are one place. */
function isSameCut(contour: Contour, cut: Cut, before: Cut | undefined): boolean {
  if (!before || before.place !== cut.place) return false;
  if (before.segment === cut.segment) return true;
  const between = (cut.segment - before.segment + contour.length) % contour.length;
  return (
    between === 1 &&
    (1 - before.fraction) * sizeOf(contour, before.segment) + cut.fraction * sizeOf(contour, cut.segment) <
      4 * tolerance.sameBoundary
  );
}

function sizeOf(contour: Contour, segment: number): number {
  const a = contour[segment % contour.length] as Vertex;
  const b = contour[(segment + 1) % contour.length] as Vertex;
  return Math.hypot(b.x - a.x, b.y - a.y);
}

function runBetween({ table }: SegmentIndex, contour: Contour, from: Cut, to: Cut): readonly Vertex[] {
  const at = (cut: Cut): Point => {
    const out = new Float64Array(2);
    pointAlong(table, cut.segment, cut.fraction, out);
    return { x: num(out, 0), y: num(out, 1) };
  };
  const isWithin = from.segment === to.segment && to.fraction > from.fraction;
  const bulgeAt = (segment: number): number => (contour[segment] as Vertex).bulge;
  const start = at(from);
  const end = { ...at(to), bulge: 0 };
  if (isWithin) return [{ ...start, bulge: part(bulgeAt(from.segment), to.fraction - from.fraction) }, end];
  const vertices: Vertex[] = [{ ...start, bulge: part(bulgeAt(from.segment), 1 - from.fraction) }];
  let segment = (from.segment + 1) % contour.length;
  for (let guard = 0; guard <= contour.length; guard++) {
    const vertex = contour[segment] as Vertex;
    if (segment === to.segment) {
      vertices.push({ ...vertex, bulge: part(vertex.bulge, to.fraction) });
      break;
    }
    vertices.push(vertex);
    segment = (segment + 1) % contour.length;
  }
  return [...vertices, end].filter((vertex, i, all) => {
    const next = all[i + 1];
    return !next || Math.hypot(next.x - vertex.x, next.y - vertex.y) > tolerance.samePoint;
  });
}

const part = (bulge: number, share: number): number =>
  share === 1 || bulge === 0 ? bulge : portable.tan(portable.atan(bulge) * share);
