import type { Point } from '../geometry/contour';
import type { SegmentIndex } from '../geometry/segment-index';
import { pointAlong } from '../geometry/along-segment';
import { isBesideArc, num, type SegmentTable } from '../geometry/segment-table';
import { footOn, insideOf, isBeside } from '../geometry/site';
import * as portable from '../geometry/portable-math';

/** What a picked point can hold on to. */
export type SnapKind = 'end' | 'middle' | 'centre' | 'tangent' | 'square' | 'edge';

export interface SnapPlace {
  readonly kind: SnapKind;
  readonly at: Point;
  readonly segment: number;
}

/**
 * What near a pointer a picked point holds on to, within `reach` (mm): an end, the middle of a segment, the centre of
 * an arc; seen from a first point also where a line from it touches an arc or meets a segment squarely; else the
 * nearest place on an edge. The nearest of the named places wins over any place on an edge. Null in the open.
 */
export function snapPlace(
  index: SegmentIndex,
  pointer: Point,
  reach: number,
  from: Point | null,
): SnapPlace | null {
  const { table } = index;
  let named: SnapPlace | null = null;
  let edge: SnapPlace | null = null;
  const nearer = (a: SnapPlace, b: SnapPlace | null) => {
    if (distance(a.at, pointer) > reach) return b;
    return !b || distance(a.at, pointer) < distance(b.at, pointer) ? a : b;
  };
  for (const segment of segmentsAbout(index, pointer, reach)) {
    for (const place of namedPlaces(table, segment, from)) named = nearer(place, named);
    if (isBeside(table, segment, pointer.x, pointer.y)) {
      const at = footOn(insideOf(table, segment), pointer.x, pointer.y);
      edge = nearer({ kind: 'edge', at, segment }, edge);
    }
  }
  return named ?? edge;
}

/** Segments whose box is near, and arcs whose centre is. */
function segmentsAbout({ table, tree }: SegmentIndex, { x, y }: Point, reach: number): readonly number[] {
  const near = new Set(tree?.search(x - reach, y - reach, x + reach, y + reach) ?? []);
  for (let i = 0; i < table.count; i++) {
    if (num(table.radius, i) === 0) continue;
    if (Math.hypot(num(table.cx, i) - x, num(table.cy, i) - y) <= reach) near.add(i);
  }
  return [...near].sort((a, b) => a - b);
}

function namedPlaces(table: SegmentTable, segment: number, from: Point | null): readonly SnapPlace[] {
  const at = new Float64Array(2);
  pointAlong(table, segment, 0.5, at);
  const places: SnapPlace[] = [
    { kind: 'end', at: { x: num(table.x0, segment), y: num(table.y0, segment) }, segment },
    { kind: 'end', at: { x: num(table.x1, segment), y: num(table.y1, segment) }, segment },
    { kind: 'middle', at: { x: num(at, 0), y: num(at, 1) }, segment },
  ];
  if (num(table.radius, segment) > 0) {
    places.push({ kind: 'centre', at: { x: num(table.cx, segment), y: num(table.cy, segment) }, segment });
  }
  if (!from) return places;
  if (isBeside(table, segment, from.x, from.y)) {
    places.push({ kind: 'square', at: footOn(insideOf(table, segment), from.x, from.y), segment });
  }
  return [...places, ...tangentsFrom(table, segment, from)];
}

/** Where lines from a point touch an arc: on the circle over the line from the point to the centre (Thales). */
function tangentsFrom(table: SegmentTable, segment: number, from: Point): readonly SnapPlace[] {
  const radius = num(table.radius, segment);
  const [cx, cy] = [num(table.cx, segment), num(table.cy, segment)];
  const away = Math.hypot(from.x - cx, from.y - cy);
  if (radius === 0 || away <= radius) return [];
  const towards = portable.atan2(from.y - cy, from.x - cx);
  const half = portable.acos(radius / away);
  return [towards + half, towards - half]
    .map((angle) => ({ x: cx + radius * portable.cos(angle), y: cy + radius * portable.sin(angle) }))
    .filter(({ x, y }) => isBesideArc(table, segment, x, y))
    .map((at) => ({ kind: 'tangent', at, segment }));
}

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);
