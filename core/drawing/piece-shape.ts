import type { Point } from '../geometry/contour';
import type { ParsedEntity, ParsedGroup } from './parse-entities';
import type { EllipsePart, Part, SegmentPart, SplinePart } from './raw-drawing';
import { bulgeParts, flatSegment } from './bulge-parts';
import { extrusionOf, pointOf, valueOf } from './group-values';
import { chained, cross, moved, planeOf, turned, vector, type Transform, type Vector } from './transform';

/** The curves of an entity in the drawing's plane, or why there are none. */
export type PieceShape =
  { readonly closed: boolean; readonly parts: readonly Part[] } | { readonly reason: string };

export const incomplete = 'incomplete: a coordinate or radius is missing';
export const tilted = 'tilted out of the drawing plane';
const pointLike = 'zero length';

/** Turns an entity into lines, arcs, ellipses and splines, placed by `place` (the blocks it sits in). */
export function pieceShape(entity: ParsedEntity, place: Transform): PieceShape {
  const { groups } = entity;
  switch (entity.kind) {
    case 'LINE':
      return lineShape(groups, place);
    case 'CIRCLE':
      return circleShape(groups, place, 0, 2 * Math.PI);
    case 'ARC':
      return arcShape(groups, place);
    case 'ELLIPSE':
      return ellipseShape(groups, place);
    case 'LWPOLYLINE':
      return lightPolylineShape(groups, place);
    case 'POLYLINE':
      return polylineShape(entity, place);
    case 'SPLINE':
      return splineShape(groups, place);
    default:
      return { reason: 'kind that is not read' };
  }
}

function lineShape(groups: readonly ParsedGroup[], place: Transform): PieceShape {
  const from = pointOf(groups, 10);
  const to = pointOf(groups, 11);
  if (!from || !to) return { reason: incomplete };
  const [a, b] = [moved(place, from), moved(place, to)];
  if (isTilted([a, b])) return { reason: tilted };
  return { closed: false, parts: [flatSegment(a, b)] };
}

function arcShape(groups: readonly ParsedGroup[], place: Transform): PieceShape {
  const startDegrees = valueOf(groups, 50);
  const endDegrees = valueOf(groups, 51);
  if (startDegrees === undefined || endDegrees === undefined) return { reason: incomplete };
  const start = (startDegrees * Math.PI) / 180;
  return circleShape(groups, place, start, start + sweepOf(((endDegrees - startDegrees) * Math.PI) / 180));
}

/** An angle's size within one turn, a full turn for none: arcs run counter-clockwise from start to end. */
function sweepOf(difference: number): number {
  const turns = difference / (2 * Math.PI);
  const part = turns - Math.floor(turns);
  return part === 0 ? 2 * Math.PI : part * 2 * Math.PI;
}

function circleShape(groups: readonly ParsedGroup[], place: Transform, from: number, to: number): PieceShape {
  const centre = pointOf(groups, 10);
  const radius = valueOf(groups, 40);
  if (!centre || radius === undefined) return { reason: incomplete };
  if (radius <= 0) return { reason: pointLike };
  const plane = chained(place, planeOf(extrusionOf(groups)));
  if (isTilted([turned(plane, vector(1, 0, 0)), turned(plane, vector(0, 1, 0)), vector(0, 0, 0)]))
    return { reason: tilted };
  return conic(
    moved(plane, centre),
    turned(plane, vector(radius, 0, 0)),
    turned(plane, vector(0, radius, 0)),
    from,
    to,
  );
}

function ellipseShape(groups: readonly ParsedGroup[], place: Transform): PieceShape {
  const centre = pointOf(groups, 10);
  const major = pointOf(groups, 11);
  const ratio = valueOf(groups, 40);
  if (!centre || !major || ratio === undefined) return { reason: incomplete };
  // Centre and axis are in space already; the extrusion only tells which way round it runs.
  const normal = planeOf(extrusionOf(groups)).z;
  const across = cross(normal, major);
  const u = turned(place, major);
  const v = turned(place, vector(across.x * ratio, across.y * ratio, across.z * ratio));
  if (isTilted([u, v, vector(0, 0, 0)])) return { reason: tilted };
  const from = valueOf(groups, 41) ?? 0;
  const to = from + sweepOf((valueOf(groups, 42) ?? 2 * Math.PI) - from);
  return conic(moved(place, centre), u, v, from, to);
}

/** An arc where both half-diameters are square and equal to rounding, else a part of an ellipse. */
function conic(centre: Vector, u: Vector, v: Vector, from: number, to: number): PieceShape {
  const lengthU = Math.hypot(u.x, u.y);
  const lengthV = Math.hypot(v.x, v.y);
  const area = Math.abs(u.x * v.y - u.y * v.x);
  if (area === 0) return { reason: pointLike };
  const closed = to - from >= 2 * Math.PI;
  const rounding = 2 ** -40;
  const size = lengthU * lengthV;
  const round =
    Math.abs(u.x * v.x + u.y * v.y) <= size * rounding && Math.abs(lengthU - lengthV) <= lengthU * rounding;
  if (!round) {
    const part: EllipsePart = { type: 'ellipse', centre: flat(centre), u: flat(u), v: flat(v), from, to };
    return { closed, parts: [part] };
  }
  const pieces = Math.max(1, Math.ceil((to - from) / Math.PI - rounding));
  const step = (to - from) / pieces;
  const bulge = Math.tan(step / 4) * Math.sign(u.x * v.y - u.y * v.x);
  const at = (t: number): Point => ({
    x: centre.x + u.x * Math.cos(t) + v.x * Math.sin(t),
    y: centre.y + u.y * Math.cos(t) + v.y * Math.sin(t),
  });
  const parts: SegmentPart[] = [];
  for (let i = 0; i < pieces; i++) {
    const end = closed && i + 1 === pieces ? at(from) : at(from + step * (i + 1));
    parts.push({ type: 'segment', from: at(from + step * i), to: end, bulge: clampedBulge(bulge) });
  }
  return { closed, parts };
}

/** tan(π/4) is 1 less a rounding error; a half turn is exactly 1. */
const clampedBulge = (bulge: number): number =>
  Math.abs(Math.abs(bulge) - 1) < 2 ** -50 ? Math.sign(bulge) : bulge;

function lightPolylineShape(groups: readonly ParsedGroup[], place: Transform): PieceShape {
  const vertices: { x: number; y?: number; bulge: number }[] = [];
  for (const { code, value } of groups) {
    if (code === 10) vertices.push({ x: value, bulge: 0 });
    const last = vertices[vertices.length - 1];
    if (!last) continue;
    if (code === 20) last.y = value;
    if (code === 42) last.bulge = value;
  }
  const elevation = valueOf(groups, 38) ?? 0;
  const points = vertices.map(({ x, y, bulge }) => ({ x, y: y ?? Number.NaN, z: elevation, bulge }));
  if (points.length === 0 || points.some(({ y }) => Number.isNaN(y))) return { reason: incomplete };
  const closed = ((valueOf(groups, 70) ?? 0) & 1) === 1;
  return polyline(points, closed, chained(place, planeOf(extrusionOf(groups))));
}

/** POLYLINE flags (DXF reference): 1 closed, 8 in space, 16 mesh, 64 polyface; VERTEX flag 16: point of a spline frame. */
function polylineShape(entity: ParsedEntity, place: Transform): PieceShape {
  const flags = valueOf(entity.groups, 70) ?? 0;
  if ((flags & 16) !== 0 || (flags & 64) !== 0) return { reason: 'mesh: not an outline' };
  const onCurve = entity.vertices.filter((vertex) => ((valueOf(vertex, 70) ?? 0) & 16) === 0);
  const closed = (flags & 1) === 1;
  const inSpace = (flags & 8) !== 0;
  const elevation = valueOf(entity.groups, 30) ?? 0;
  const points = onCurve.map((vertex) => {
    const at = pointOf(vertex, 10);
    return at && { ...at, z: inSpace ? at.z : elevation, bulge: inSpace ? 0 : (valueOf(vertex, 42) ?? 0) };
  });
  const whole = points.filter((point) => point !== undefined);
  if (whole.length === 0 || whole.length < points.length) return { reason: incomplete };
  return polyline(whole, closed, inSpace ? place : chained(place, planeOf(extrusionOf(entity.groups))));
}

function polyline(
  points: readonly (Vector & { readonly bulge: number })[],
  closed: boolean,
  place: Transform,
): PieceShape {
  const placed = points.map((point) => moved(place, point));
  if (isTilted(placed)) return { reason: tilted };
  if (points.length < 2) return { reason: pointLike };
  const parts: Part[] = [];
  for (let i = 0; i + (closed ? 0 : 1) < points.length; i++) {
    const next = (i + 1) % points.length;
    const from = points[i] as Vector & { bulge: number };
    parts.push(...bulgeParts(from, points[next] as Vector, from.bulge, place));
  }
  return { closed, parts };
}

function splineShape(groups: readonly ParsedGroup[], place: Transform): PieceShape {
  const all = (code: number): number[] =>
    groups.filter((group) => group.code === code).map(({ value }) => value);
  const [xs, ys, zs] = [all(10), all(20), all(30)];
  const degree = valueOf(groups, 71) ?? 3;
  const knots = all(40);
  if (xs.length === 0 && all(11).length > 0)
    return { reason: 'spline with fit points only: its curve is not stated' };
  if (xs.length < 2 || ys.length !== xs.length) return { reason: incomplete };
  const weights = all(41);
  const rising = knots.every((knot, i) => i === 0 || knot >= (knots[i - 1] as number));
  const fits = degree >= 1 && xs.length > degree && knots.length === xs.length + degree + 1 && rising;
  // A knot more manifold than the degree, other than at an end, would let the curve jump.
  const jumps = knots.slice(degree + 1, xs.length).some((knot, i, inner) => knot === inner[i + degree]);
  const weighed =
    weights.length === 0 || (weights.length === xs.length && weights.every((weight) => weight > 0));
  if (!fits || jumps || !weighed) return { reason: 'spline whose knots, points and weights do not match' };
  if ((knots[degree] as number) >= (knots[xs.length] as number)) return { reason: pointLike };
  const placed = xs.map((x, i) => moved(place, vector(x, ys[i] as number, zs[i] ?? 0)));
  if (isTilted(placed)) return { reason: tilted };
  const part: SplinePart = {
    type: 'spline',
    degree,
    knots,
    points: placed.map(flat),
    weights: weights.length === 0 ? xs.map(() => 1) : weights,
  };
  return { closed: false, parts: [part] };
}

const flat = ({ x, y }: Vector): Point => ({ x, y });

/** Rises or falls by more than a thousandth of its extent: by half a millionth less the length still holds. */
function isTilted(points: readonly Vector[]): boolean {
  const wide = Math.hypot(
    extent(points, ({ x }) => x),
    extent(points, ({ y }) => y),
  );
  return extent(points, ({ z }) => z) > wide * 0.001;
}

function extent(points: readonly Vector[], along: (point: Vector) => number): number {
  let low = Infinity;
  let high = -Infinity;
  for (const point of points) {
    low = Math.min(low, along(point));
    high = Math.max(high, along(point));
  }
  return high - low;
}
