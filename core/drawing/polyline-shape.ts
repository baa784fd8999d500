import { bulgeParts } from './bulge-parts';
import { planeIn, pointOf, valueOf, type Groups } from './group-values';
import type { ParsedEntity } from './parse-entities';
import { incomplete, isTilted, oneRun, pointLike, tilted, type Curve, type PieceShape } from './shape';
import { moved, unmoved, type Transform, type Vector } from './transform';

/** Straight and bulged segments through points given in their own plane. */
export function polylineThrough(
  points: readonly (Vector & { readonly bulge: number })[],
  closed: boolean,
  place: Transform,
): PieceShape {
  if (points.length < 2) return { reason: pointLike };
  if (place !== unmoved || points.some(({ z }) => z !== points[0]?.z)) {
    if (isTilted(points.map((point) => moved(place, point)))) return { reason: tilted };
  }
  const parts: Curve[] = [];
  for (let i = 0; i + (closed ? 0 : 1) < points.length; i++) {
    const next = (i + 1) % points.length;
    const from = points[i] as Vector & { bulge: number };
    parts.push(...bulgeParts(from, points[next] as Vector, from.bulge, place));
  }
  return oneRun(closed, parts);
}

/** LWPOLYLINE. */
export function lightPolylineShape(groups: Groups, place: Transform): PieceShape {
  const vertices: { x: number; y?: number; bulge: number }[] = [];
  for (let i = groups.from; i < groups.to; i++) {
    const code = groups.codes[i];
    const value = groups.values[i] as number;
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
  return polylineThrough(points, closed, planeIn(place, groups));
}

/** POLYLINE. Flags (DXF reference): 1 closed, 8 in space, 16 mesh, 64 polyface; VERTEX flag 16: point of a spline frame. */
export function polylineShape(entity: ParsedEntity, place: Transform): PieceShape {
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
  return polylineThrough(whole, closed, inSpace ? place : planeIn(place, entity.groups));
}

/** Corners in the order 1, 2, 4, 3 (DXF reference, SOLID); of a triangle the last two are one. */
export function fourCornerShape(groups: Groups, place: Transform): PieceShape {
  const [a, b, c, d] = [10, 11, 12, 13].map((code) => pointOf(groups, code));
  if (!a || !b || !c) return { reason: incomplete };
  const corners = [a, b, ...(d ? [d] : []), c].map((corner) => ({ ...corner, bulge: 0 }));
  return polylineThrough(corners, true, planeIn(place, groups));
}
