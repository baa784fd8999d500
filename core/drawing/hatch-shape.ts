import type { Point } from '../geometry/contour';
import type { Groups } from './group-values';
import { planeIn, valueOf } from './group-values';
import { bulgeParts, flatSegment } from './bulge-parts';
import { conicShape, sweepOf } from './conic-shape';
import { polylineThrough } from './polyline-shape';
import { incomplete, joinedParts, tilted, type Curve, type PieceShape, type ShapeRun } from './shape';
import { splineShape } from './spline-shape';
import { moved, turned, vector, type Transform, type Vector } from './transform';
import * as portable from '../geometry/portable-math';

/**
 * The boundary of a HATCH, one closed run for each of its paths (DXF reference, HATCH, boundary path data): a polyline,
 * or edges that are lines, arcs, ellipses and splines, all in the plane of the hatch.
 */
export function hatchShape(groups: Groups, place: Transform): PieceShape {
  const plane = planeIn(place, groups);
  if (Math.hypot(plane.x.z, plane.y.z) > tiltedSlope) return { reason: tilted };
  const elevation = valueOf(groups, 30) ?? 0;
  const cursor = new Cursor(groups);
  const runs: ShapeRun[] = [];
  while (cursor.skipTo(92)) {
    const flags = cursor.take(92) ?? 0;
    const run =
      (flags & polylineFlag) !== 0
        ? polylinePath(cursor, elevation, plane)
        : edgePath(cursor, elevation, plane);
    if (!run) return { reason: incomplete };
    runs.push(run);
  }
  return runs.length > 0 ? { runs, remark: null } : { reason: incomplete };
}

const polylineFlag = 2;
const tiltedSlope = 0.001;

/** Reads groups in their order; lives for one hatch. */
class Cursor {
  at: number;
  private readonly groups: Groups;

  constructor(groups: Groups) {
    this.groups = groups;
    this.at = groups.from;
  }

  skipTo(code: number): boolean {
    while (this.at < this.groups.to && this.groups.codes[this.at] !== code) this.at++;
    return this.at < this.groups.to;
  }

  /** The value of the next group if it has this code (groups that are not read are passed over). */
  take(code: number): number | null {
    while (this.at < this.groups.to && Number.isNaN(this.groups.values[this.at])) this.at++;
    if (this.at >= this.groups.to || this.groups.codes[this.at] !== code) return null;
    return this.groups.values[this.at++] as number;
  }

  point(code: number): Point | null {
    const x = this.take(code);
    const y = this.take(code + 10);
    return x === null || y === null ? null : { x, y };
  }

  left(): number {
    return this.groups.to - this.at;
  }

  /** The groups passed over while something was taken, as groups of their own. */
  range(from: number): Groups {
    return { ...this.groups, from, to: this.at };
  }
}

function polylinePath(cursor: Cursor, z: number, plane: Transform): ShapeRun | null {
  const hasBulges = cursor.take(72) === 1;
  cursor.take(73);
  const count = cursor.take(93) ?? 0;
  const corners: (Vector & { bulge: number })[] = [];
  for (let i = 0; i < count && cursor.left() > 0; i++) {
    const at = cursor.point(10);
    if (!at) return null;
    corners.push({ ...at, z, bulge: hasBulges ? (cursor.take(42) ?? 0) : 0 });
  }
  const shape = polylineThrough(corners, true, plane);
  return 'reason' in shape ? null : (shape.runs[0] ?? null);
}

function edgePath(cursor: Cursor, z: number, plane: Transform): ShapeRun | null {
  const count = cursor.take(93) ?? 0;
  const curves: Curve[] = [];
  for (let i = 0; i < count && cursor.left() > 0; i++) {
    const edge = edgeParts(cursor, z, plane);
    if (!edge) return null;
    curves.push(...edge);
  }
  return curves.length > 0 ? { closed: true, parts: joinedParts(curves) } : null;
}

function edgeParts(cursor: Cursor, z: number, plane: Transform): readonly Curve[] | null {
  switch (cursor.take(72)) {
    case 1: {
      const [from, to] = [cursor.point(10), cursor.point(11)];
      return from && to ? [flatSegment(moved(plane, { ...from, z }), moved(plane, { ...to, z }))] : null;
    }
    case 2:
      return arcParts(cursor, z, plane);
    case 3:
      return ellipseParts(cursor, z, plane);
    case 4:
      return splineParts(cursor, plane);
    default:
      return null;
  }
}

function arcParts(cursor: Cursor, z: number, plane: Transform): readonly Curve[] | null {
  const centre = cursor.point(10);
  const [radius, start, end] = [cursor.take(40), cursor.take(50), cursor.take(51)];
  const isForward = cursor.take(73) !== 0;
  if (!centre || radius === null || start === null || end === null || radius <= 0) return null;
  // Angles of a clockwise arc count clockwise.
  const sense = isForward ? 1 : -1;
  const from = (start * Math.PI) / 180;
  const sweep = sweepOf(((end - start) * Math.PI) / 180);
  const at = (angle: number): Vector =>
    vector(
      centre.x + radius * portable.cos(sense * angle),
      centre.y + radius * portable.sin(sense * angle),
      z,
    );
  const middle = from + sweep / 2;
  const bulge = sense * portable.tan(sweep / 8);
  return [
    ...bulgeParts(at(from), at(middle), bulge, plane),
    ...bulgeParts(at(middle), at(from + sweep), bulge, plane),
  ];
}

function ellipseParts(cursor: Cursor, z: number, plane: Transform): readonly Curve[] | null {
  const [centre, major] = [cursor.point(10), cursor.point(11)];
  const [ratio, start, end] = [cursor.take(40), cursor.take(50), cursor.take(51)];
  const sense = cursor.take(73) !== 0 ? 1 : -1;
  if (!centre || !major || ratio === null || start === null || end === null) return null;
  const u = turned(plane, vector(major.x, major.y, 0));
  const v = turned(plane, vector(-major.y * ratio * sense, major.x * ratio * sense, 0));
  const from = parameterOf(start, ratio);
  const to = from + sweepOf(parameterOf(end, ratio) - from);
  const shape = conicShape(moved(plane, { ...centre, z }), u, v, from, to);
  return 'reason' in shape ? null : (shape.runs[0]?.parts ?? null);
}

/** The parameter of an ellipse at a true angle (degrees); a whole turn stays a whole turn. */
function parameterOf(angleDeg: number, ratio: number): number {
  const angle = (angleDeg * Math.PI) / 180;
  const turns = Math.round(angle / (2 * Math.PI));
  const rest = angle - turns * 2 * Math.PI;
  return turns * 2 * Math.PI + portable.atan2(portable.sin(rest) / ratio, portable.cos(rest));
}

function splineParts(cursor: Cursor, plane: Transform): readonly Curve[] | null {
  const from = cursor.at;
  const degree = cursor.take(94);
  cursor.take(73);
  cursor.take(74);
  const [knots, points] = [cursor.take(95) ?? 0, cursor.take(96) ?? 0];
  for (let i = 0; i < knots && cursor.left() > 0; i++) if (cursor.take(40) === null) return null;
  const weights: number[] = [];
  for (let i = 0; i < points && cursor.left() > 0; i++) {
    if (!cursor.point(10)) return null;
    const weight = cursor.take(42);
    if (weight !== null) weights.push(weight);
  }
  const range = cursor.range(from);
  if (degree === null) return null;
  const shape = splineShape(asSpline(range, degree), plane);
  return 'reason' in shape ? null : (shape.runs[0]?.parts ?? null);
}

/** The codes of an edge as those of a SPLINE: 94 is its degree (71), 42 a weight (41); the rest agrees. */
function asSpline({ codes, values, from, to }: Groups, degree: number): Groups {
  const renamed = codes
    .slice(from, to)
    .map((code) => (code === 42 ? 41 : code === 94 ? 71 : code < 70 ? code : 0));
  const copied = values.slice(from, to);
  copied[0] = degree;
  return { codes: renamed, values: copied, from: 0, to: to - from };
}
