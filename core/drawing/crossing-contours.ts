import Flatbush from 'flatbush';
import type { Contour, Point } from '../geometry/contour';
import { segmentLength } from '../geometry/contour-measures';
import { crossingRoom, crossSegments } from '../geometry/cross-segments';
import { addSegment, emptyTable, num, segmentBoxes, type SegmentTable } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';

/** Two contours that cross or touch, or one that does so with itself (first = second). */
export interface Crossing {
  readonly first: number;
  readonly second: number;
  readonly places: readonly Point[];
}

/** Every pair of contours that meet, and every contour that meets itself away from its own joints. */
export function crossingContours(contours: readonly Contour[]): readonly Crossing[] {
  const segments = allSegments(contours);
  const { table, ring } = segments;
  if (table.count === 0) return [];
  const boxes = segmentBoxes(table);
  const index = new Flatbush(table.count);
  const box = (i: number, side: number): number => boxes[4 * i + side] as number;
  for (let i = 0; i < table.count; i++) index.add(box(i, 0), box(i, 1), box(i, 2), box(i, 3));
  index.finish();
  const found = new Map<string, Point[]>();
  const out = new Float64Array(2 * crossingRoom);
  for (let i = 0; i < table.count; i++) {
    for (const j of index.search(box(i, 0), box(i, 1), box(i, 2), box(i, 3), (other) => other > i)) {
      const count = crossSegments(table, i, table, j, out);
      for (let k = 0; k < count; k++) {
        const place = { x: num(out, 2 * k), y: num(out, 2 * k + 1) };
        if (ring[i] === ring[j] && isOwnJoint(segments, i, j, place)) continue;
        const key = `${ring[i]} ${ring[j]}`;
        const places = found.get(key) ?? [];
        if (places.every((other) => Math.hypot(other.x - place.x, other.y - place.y) > tolerance.samePoint))
          places.push(place);
        found.set(key, places);
      }
    }
  }
  return [...found].map(([key, places]) => {
    const [first = 0, second = 0] = key.split(' ').map(Number);
    return { first, second, places: places.sort((a, b) => a.x - b.x || a.y - b.y) };
  });
}

interface AllSegments {
  readonly table: SegmentTable;
  /** Index of each segment's contour. */
  readonly ring: number[];
  /** Where along its contour each segment begins, and the length of that contour. */
  readonly begins: number[];
  readonly around: number[];
}

function allSegments(contours: readonly Contour[]): AllSegments {
  const table = emptyTable(contours.reduce((sum, contour) => sum + contour.length, 0));
  const all: AllSegments = { table, ring: [], begins: [], around: [] };
  contours.forEach((contour, r) => {
    const first = table.count;
    let along = 0;
    contour.forEach((from, i) => {
      const to = contour[(i + 1) % contour.length] ?? from;
      addSegment(table, from.x, from.y, to.x, to.y, from.bulge);
      all.ring.push(r);
      all.begins.push(along);
      along += segmentLength(from, to);
    });
    for (let i = first; i < table.count; i++) all.around.push(along);
  });
  return all;
}

/**
 * Whether two segments of one contour meet only because they follow each other: from the place along one to its end,
 * over what lies between, to the place along the other is next to no way. Tangent arcs meet "again" within rounding of
 * their joint, which is why the way counts and not the point.
 */
function isOwnJoint({ table, begins, around }: AllSegments, i: number, j: number, place: Point): boolean {
  const near = 2 * tolerance.gap;
  const toStart = (s: number): number => Math.hypot(num(table.x0, s) - place.x, num(table.y0, s) - place.y);
  const toEnd = (s: number): number => Math.hypot(num(table.x1, s) - place.x, num(table.y1, s) - place.y);
  const whole = around[i] as number;
  const ends = (s: number): number =>
    begins[s + 1] !== undefined && begins[s + 1] !== 0 ? (begins[s + 1] as number) : whole;
  const between = (a: number, b: number): number => {
    const way = (begins[b] as number) - ends(a);
    return ((way % whole) + whole) % whole;
  };
  // A way of almost the whole round is no way at all: rounding put the start a hair before the end.
  const short = (a: number, b: number): number => Math.min(between(a, b), Math.abs(whole - between(a, b)));
  return toEnd(i) + short(i, j) + toStart(j) < near || toEnd(j) + short(j, i) + toStart(i) < near;
}
