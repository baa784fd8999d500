import type { Contour, Point, Vertex } from '../geometry/contour';
import { segmentLength } from '../geometry/contour-measures';
import { crossingRoom, crossSegments } from '../geometry/cross-segments';
import { addSegment, emptyTable, num, type SegmentTable } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import { limits } from './limits';
import { eachOverlap } from './overlapping-segments';

/** Two contours that cross or touch, or one that does so with itself (first = second). */
export interface Crossing {
  readonly first: number;
  readonly second: number;
  /** At most as many as limits.meetingPlaces. */
  readonly places: readonly Point[];
}

/**
 * Every pair of contours that meet, and every contour that meets itself away from its own joints; null where so much
 * overlaps that it would take for ever.
 */
export function crossingContours(contours: readonly Contour[]): readonly Crossing[] | null {
  const segments = allSegments(contours);
  const { table, ring } = segments;
  if (table.count === 0) return [];
  const found = new Map<string, Point[]>();
  const out = new Float64Array(2 * crossingRoom);
  let looked = 0;
  const meet = (i: number, j: number): boolean => {
    // Each pair is looked at once, from its earlier segment.
    looked += 2;
    const count = crossSegments(table, i, table, j, out);
    for (let k = 0; k < count; k++) {
      const [x, y] = [num(out, 2 * k), num(out, 2 * k + 1)];
      if (ring[i] === ring[j] && isJoint(segments, i, j, x, y)) continue;
      const place = { x, y };
      if (ring[i] === ring[j] && isOwnJoint(segments, i, j, place)) continue;
      const key = `${ring[i]} ${ring[j]}`;
      const places = found.get(key) ?? [];
      if (places.length >= limits.meetingPlaces) continue;
      // Comparing with the places known costs as much as looking at pairs does.
      looked += places.length / 8;
      const isNew = places.every(
        (other) => Math.hypot(other.x - place.x, other.y - place.y) > tolerance.samePoint,
      );
      if (isNew) places.push(place);
      found.set(key, places);
    }
    return looked <= limits.overlappingBoxes && found.size <= limits.meetings;
  };
  if (!eachOverlap(table, segments.first, meet)) return null;
  return [...found].map(([key, places]) => {
    const [first = 0, second = 0] = key.split(' ').map(Number);
    return { first, second, places: places.sort((a, b) => a.x - b.x || a.y - b.y) };
  });
}

interface AllSegments {
  readonly contours: readonly Contour[];
  readonly table: SegmentTable;
  /** Index of each segment's contour, and of each contour's first segment. */
  readonly ring: Int32Array;
  readonly first: Int32Array;
  /** Where along its contour each segment begins, and last its length all round; worked out where it is asked for. */
  readonly along: Map<number, Float64Array>;
}

function allSegments(contours: readonly Contour[]): AllSegments {
  const total = contours.reduce((sum, contour) => sum + contour.length, 0);
  const table = emptyTable(total);
  const ring = new Int32Array(total);
  const first = new Int32Array(contours.length);
  for (let r = 0; r < contours.length; r++) {
    const contour = contours[r] as Contour;
    first[r] = table.count;
    let from = contour[contour.length - 1] as Vertex;
    for (let i = 0; i < contour.length; i++) {
      const to = contour[i] as Vertex;
      // The segment that leads to the first vertex is the last.
      if (i > 0) addSegment(table, from.x, from.y, to.x, to.y, from.bulge);
      from = to;
    }
    const start = contour[0] as Vertex;
    addSegment(table, from.x, from.y, start.x, start.y, from.bulge);
    ring.fill(r, first[r], table.count);
  }
  return { contours, table, ring, first, along: new Map() };
}

/** The plain case: two segments that follow each other meet where they are joined. */
function isJoint(
  { contours, table, ring, first }: AllSegments,
  i: number,
  j: number,
  x: number,
  y: number,
): boolean {
  const r = ring[i] as number;
  const last = (first[r] as number) + (contours[r] as Contour).length - 1;
  const near = tolerance.gap;
  const isNear = (s: number): boolean =>
    Math.abs(num(table.x1, s) - x) < near && Math.abs(num(table.y1, s) - y) < near;
  return (j === i + 1 && isNear(i)) || (i === first[r] && j === last && isNear(j));
}

/**
 * Whether two segments of one contour meet only because they follow each other: from the place along one to its end,
 * over what lies between, to the place along the other is next to no way. Tangent arcs meet "again" within rounding of
 * their joint, which is why the way counts and not the point.
 */
function isOwnJoint(segments: AllSegments, i: number, j: number, place: Point): boolean {
  const { table, ring, first } = segments;
  const near = 2 * tolerance.gap;
  const toStart = (s: number): number => Math.hypot(num(table.x0, s) - place.x, num(table.y0, s) - place.y);
  const toEnd = (s: number): number => Math.hypot(num(table.x1, s) - place.x, num(table.y1, s) - place.y);
  const [forth, back] = [toEnd(i) + toStart(j), toEnd(j) + toStart(i)];
  if (forth >= near && back >= near) return false;
  const r = ring[i] as number;
  const along = alongOf(segments, r);
  const whole = along[along.length - 1] as number;
  // A way of almost the whole round is no way at all: rounding put the start a hair before the end.
  const between = (a: number, b: number): number => {
    const from = along[a - (first[r] as number) + 1] as number;
    const way = ((((along[b - (first[r] as number)] as number) - from) % whole) + whole) % whole;
    return Math.min(way, Math.abs(whole - way));
  };
  return forth + between(i, j) < near || back + between(j, i) < near;
}

function alongOf({ contours, along }: AllSegments, r: number): Float64Array {
  const known = along.get(r);
  if (known) return known;
  const contour = contours[r] as Contour;
  const lengths = new Float64Array(contour.length + 1);
  contour.forEach((from, i) => {
    const to = contour[(i + 1) % contour.length] as Vertex;
    lengths[i + 1] = (lengths[i] as number) + segmentLength(from, to);
  });
  along.set(r, lengths);
  return lengths;
}
