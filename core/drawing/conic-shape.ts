import type { Point, Vertex } from '../geometry/contour';
import { extrusionOf, planeIn, pointOf, valueOf, type Groups } from './group-values';

import type { EllipsePart } from './raw-drawing';
import { incomplete, isTilted, oneRun, pointLike, tilted, type PieceShape } from './shape';
import { cross, moved, planeOf, turned, vector, type Transform, type Vector } from './transform';
import * as portable from '../geometry/portable-math';

/** An arc where both half-diameters are square and equal to rounding, else a part of an ellipse. */
export function conicShape(centre: Vector, u: Vector, v: Vector, from: number, to: number): PieceShape {
  const lengthU = Math.sqrt(u.x * u.x + u.y * u.y);
  const lengthV = Math.sqrt(v.x * v.x + v.y * v.y);
  const area = Math.abs(u.x * v.y - u.y * v.x);
  if (area === 0) return { reason: pointLike };
  const closed = to - from >= 2 * Math.PI;
  const rounding = 2 ** -40;
  const size = lengthU * lengthV;
  const round =
    Math.abs(u.x * v.x + u.y * v.y) <= size * rounding && Math.abs(lengthU - lengthV) <= lengthU * rounding;
  if (!round) {
    const part: EllipsePart = { type: 'ellipse', centre: flat(centre), u: flat(u), v: flat(v), from, to };
    return oneRun(closed, [part]);
  }
  return oneRun(closed, [{ type: 'chain', chain: roundChain(centre, u, v, from, to, closed) }]);
}

/** Arcs of at most a half turn from one angle to the other; nothing is made but the vertices. */
function roundChain(
  { x, y }: Vector,
  u: Vector,
  v: Vector,
  from: number,
  to: number,
  closed: boolean,
): readonly Vertex[] {
  const pieces = Math.max(1, Math.ceil((to - from) / Math.PI - 2 ** -40));
  const step = (to - from) / pieces;
  const bulge = clampedBulge(portable.tan(step / 4) * Math.sign(u.x * v.y - u.y * v.x));
  // Of its full length from the start: an array that grows keeps room for more.
  const chain = new Array<Vertex>(pieces + 1);
  for (let i = 0; i <= pieces; i++) {
    const isLast = i === pieces;
    // A circle ends on the very point it begins with.
    const t = isLast && closed ? from : from + step * i;
    const [cos, sin] = [portable.cos(t), portable.sin(t)];
    chain[i] = { x: x + u.x * cos + v.x * sin, y: y + u.y * cos + v.y * sin, bulge: isLast ? 0 : bulge };
  }
  return chain;
}

/** tan(π/4) is 1 less a rounding error; a half turn is exactly 1. */
const clampedBulge = (bulge: number): number =>
  Math.abs(Math.abs(bulge) - 1) < 2 ** -50 ? Math.sign(bulge) : bulge;

/** ARC. */
export function arcShape(groups: Groups, place: Transform): PieceShape {
  const startDegrees = valueOf(groups, 50);
  const endDegrees = valueOf(groups, 51);
  if (startDegrees === undefined || endDegrees === undefined) return { reason: incomplete };
  const start = (startDegrees * Math.PI) / 180;
  return circleShape(groups, place, start, start + sweepOf(((endDegrees - startDegrees) * Math.PI) / 180));
}

/** CIRCLE, or a part of one. */
export function circleShape(groups: Groups, place: Transform, from: number, to: number): PieceShape {
  const centre = pointOf(groups, 10);
  const radius = valueOf(groups, 40);
  if (!centre || radius === undefined) return { reason: incomplete };
  if (radius <= 0) return { reason: pointLike };
  const plane = planeIn(place, groups);
  // Most entities lie in the drawing's plane.
  const isFlat = plane.x.z === 0 && plane.y.z === 0;
  if (!isFlat && isTilted([plane.x, plane.y, vector(0, 0, 0)])) return { reason: tilted };
  return conicShape(
    moved(plane, centre),
    turned(plane, vector(radius, 0, 0)),
    turned(plane, vector(0, radius, 0)),
    from,
    to,
  );
}

/** ELLIPSE. */
export function ellipseShape(groups: Groups, place: Transform): PieceShape {
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
  return conicShape(moved(place, centre), u, v, from, to);
}

/** An angle's size within one turn, a full turn for none: arcs run counter-clockwise from start to end. */
export function sweepOf(difference: number): number {
  const turns = difference / (2 * Math.PI);
  const part = turns - Math.floor(turns);
  return part === 0 ? 2 * Math.PI : part * 2 * Math.PI;
}

const flat = ({ x, y }: Vector): Point => ({ x, y });
