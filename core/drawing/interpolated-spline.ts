import type { Point } from '../geometry/contour';
import type { SplinePart } from './raw-drawing';

export interface SplineEnds {
  /** Runs on smoothly from the last point to the first. */
  readonly isClosed: boolean;
  /** Direction at the first and last point, of any length; null: natural (no curvature there). */
  readonly start: Point | null;
  readonly end: Point | null;
}

/**
 * The cubic spline through points with chord-length parameters (Piegl & Tiller, The NURBS Book, 9.2: the parameter
 * grows by the distance between points), its first and second derivative continuous; null where fewer than two points
 * are distinct. Written with every inner knot double, so that its control points are those of its Bézier pieces.
 */
export function interpolatedSpline(given: readonly Point[], ends: SplineEnds): SplinePart | null {
  const points = distinct(given);
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first || !last || points.length < 2) return null;
  const closes = ends.isClosed && points.length > 2;
  if (closes && distance(first, last) > 0) points.push(first);
  const steps = points.slice(1).map((point, i) => distance(points[i] as Point, point));
  const slopesX = slopesOf(
    points.map(({ x }) => x),
    steps,
    closes,
    ends.start && unitOf(ends.start).x,
    ends.end && unitOf(ends.end).x,
  );
  const slopesY = slopesOf(
    points.map(({ y }) => y),
    steps,
    closes,
    ends.start && unitOf(ends.start).y,
    ends.end && unitOf(ends.end).y,
  );
  const knots = [0, 0, 0, 0];
  const controls: Point[] = [first];
  let along = 0;
  steps.forEach((step, i) => {
    const [a, b] = [points[i] as Point, points[i + 1] as Point];
    controls.push(
      { x: a.x + ((slopesX[i] as number) * step) / 3, y: a.y + ((slopesY[i] as number) * step) / 3 },
      { x: b.x - ((slopesX[i + 1] as number) * step) / 3, y: b.y - ((slopesY[i + 1] as number) * step) / 3 },
    );
    along += step;
    knots.push(along, along);
  });
  controls.push(points[points.length - 1] as Point);
  knots.push(along, along);
  return { type: 'spline', degree: 3, knots, points: controls, weights: controls.map(() => 1) };
}

/** Neighbours on the same place give no parameter between them. */
function distinct(points: readonly Point[]): Point[] {
  return points.filter((point, i) => i === 0 || distance(points[i - 1] as Point, point) > 0);
}

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

function unitOf(way: Point): Point {
  const length = Math.hypot(way.x, way.y);
  return { x: way.x / length, y: way.y / length };
}

/**
 * First derivatives at the points from the continuity of the second: m(i−1)/h(i−1) + 2 (1/h(i−1) + 1/h(i)) m(i) +
 * m(i+1)/h(i) = 3 (d(i−1)/h(i−1) + d(i)/h(i)) with d the difference quotients.
 */
function slopesOf(
  values: readonly number[],
  steps: readonly number[],
  closes: boolean,
  start: number | null,
  end: number | null,
): number[] {
  const count = values.length;
  const quotient = (i: number): number =>
    ((values[i + 1] as number) - (values[i] as number)) / (steps[i] as number);
  const inverse = (i: number): number => 1 / (steps[i] as number);
  const lower = new Array<number>(count).fill(0);
  const middle = new Array<number>(count).fill(1);
  const upper = new Array<number>(count).fill(0);
  const right = new Array<number>(count).fill(0);
  for (let i = 1; i + 1 < count; i++) {
    lower[i] = inverse(i - 1);
    upper[i] = inverse(i);
    middle[i] = 2 * (inverse(i - 1) + inverse(i));
    right[i] = 3 * (quotient(i - 1) * inverse(i - 1) + quotient(i) * inverse(i));
  }
  if (closes) return closedSlopes({ lower, middle, upper, right }, inverse, quotient);
  const last = count - 1;
  if (start === null) [middle[0], upper[0], right[0]] = [2, 1, 3 * quotient(0)];
  else right[0] = start;
  if (end === null) [lower[last], middle[last], right[last]] = [1, 2, 3 * quotient(last - 1)];
  else right[last] = end;
  return solved({ lower, middle, upper, right });
}

interface Rows {
  readonly lower: number[];
  readonly middle: number[];
  readonly upper: number[];
  readonly right: number[];
}

/** The last point is the first again: one row less, its two corners taken in by the Sherman-Morrison formula. */
function closedSlopes(rows: Rows, inverse: (i: number) => number, quotient: (i: number) => number): number[] {
  const size = rows.middle.length - 1;
  const before = size - 1;
  const [lower, middle, upper, right] = [rows.lower, rows.middle, rows.upper, rows.right].map((row) =>
    row.slice(0, size),
  ) as [number[], number[], number[], number[]];
  middle[0] = 2 * (inverse(before) + inverse(0));
  upper[0] = inverse(0);
  right[0] = 3 * (quotient(before) * inverse(before) + quotient(0) * inverse(0));
  const corner = inverse(before);
  const shift = -middle[0];
  middle[0] -= shift;
  middle[before] = (middle[before] as number) - (corner * corner) / shift;
  const plain = solved({ lower, middle, upper, right });
  const edge = new Array<number>(size).fill(0);
  edge[0] = shift;
  edge[before] = corner;
  const turned = solved({ lower, middle, upper, right: edge });
  const weight = corner / shift;
  const factor =
    ((plain[0] as number) + weight * (plain[before] as number)) /
    (1 + (turned[0] as number) + weight * (turned[before] as number));
  const slopes = plain.map((value, i) => value - factor * (turned[i] as number));
  return [...slopes, slopes[0] as number];
}

/** The solution of a system with three diagonals, by elimination; it is diagonally dominant, so no pivot is needed. */
function solved({ lower, middle, upper, right }: Rows): number[] {
  const count = middle.length;
  const ahead = new Array<number>(count).fill(0);
  const value = new Array<number>(count).fill(0);
  for (let i = 0; i < count; i++) {
    const pivot = (middle[i] as number) - (i > 0 ? (lower[i] as number) * (ahead[i - 1] as number) : 0);
    ahead[i] = (upper[i] as number) / pivot;
    value[i] = ((right[i] as number) - (i > 0 ? (lower[i] as number) * (value[i - 1] as number) : 0)) / pivot;
  }
  for (let i = count - 2; i >= 0; i--)
    value[i] = (value[i] as number) - (ahead[i] as number) * (value[i + 1] as number);
  return value;
}
