import { valueOf, valuesOf, pointOf, type Groups } from './group-values';
import { interpolatedSpline } from './interpolated-spline';
import type { SplinePart } from './raw-drawing';
import { incomplete, isTilted, oneRun, pointLike, tilted, type PieceShape } from './shape';
import { moved, turned, vector, type Transform, type Vector } from './transform';

/** Flags of a SPLINE (DXF reference, group 70): 1 closed, 2 periodic. */
const closedFlags = 3;
/** The reference names no limit; from degree 11 on no drawing program writes any, and evaluating loses digits. */
const highestDegree = 11;

/**
 * A SPLINE by its knots and control points; where it has only fit points, the cubic curve through them. A closed one
 * may leave out the control points that come round again.
 */
export function splineShape(groups: Groups, place: Transform): PieceShape {
  const isClosed = ((valueOf(groups, 70) ?? 0) & closedFlags) !== 0;
  const xs = valuesOf(groups, 10);
  const fit = pointsOf(groups, 11);
  if (xs.length === 0 && fit && fit.length > 1) return throughFitPoints(groups, fit, isClosed, place);
  const stated = pointsOf(groups, 10);
  if (!stated || stated.length < 2) return { reason: incomplete };
  const degree = valueOf(groups, 71) ?? 3;
  const knots = valuesOf(groups, 40);
  const weights = valuesOf(groups, 41);
  const isWeighed = weights.length > 0;
  if (isWeighed && (weights.length !== stated.length || weights.some((weight) => !(weight > 0))))
    return mismatch;
  if (degree < 1 || degree > highestDegree)
    return { reason: `spline of degree ${degree}: 1 to ${highestDegree} are read` };
  // Knots for as many points more as the degree: the first points come round again.
  const missing = knots.length - (stated.length + degree + 1);
  const again = isClosed && missing === degree ? degree : 0;
  const points = [...stated, ...stated.slice(0, again)];
  const rising = knots.every((knot, i) => i === 0 || knot >= (knots[i - 1] as number));
  if (points.length <= degree || knots.length !== points.length + degree + 1 || !rising) return mismatch;
  // A knot more manifold than the degree, other than at an end, would let the curve jump.
  if (knots.slice(degree + 1, points.length).some((knot, i, inner) => knot === inner[i + degree]))
    return mismatch;
  if ((knots[degree] as number) >= (knots[points.length] as number)) return { reason: pointLike };
  const placed = points.map((point) => moved(place, point));
  if (isTilted(placed)) return { reason: tilted };
  const all = isWeighed ? [...weights, ...weights.slice(0, again)] : points.map(() => 1);
  const part: SplinePart = { type: 'spline', degree, knots, points: placed.map(flat), weights: all };
  return oneRun(false, [part]);
}

const mismatch = { reason: 'spline whose knots, points and weights do not match' };

function throughFitPoints(
  groups: Groups,
  fit: readonly Vector[],
  isClosed: boolean,
  place: Transform,
): PieceShape {
  const placed = fit.map((point) => moved(place, point));
  if (isTilted(placed)) return { reason: tilted };
  const way = (code: number) => {
    const tangent = pointOf(groups, code);
    return tangent && Math.hypot(tangent.x, tangent.y) > 0 ? flat(turned(place, tangent)) : null;
  };
  const part = interpolatedSpline(placed.map(flat), { isClosed, start: way(12), end: way(13) });
  if (!part) return { reason: pointLike };
  const ends = isClosed
    ? 'closed smoothly'
    : way(12) && way(13)
      ? 'with its stated end directions'
      : 'with natural ends';
  const remark =
    `given by fit points only: read as the cubic curve through them (chord-length parameters, ${ends}); ` +
    'the program it was drawn with may bend it a little differently between the points';
  return { ...oneRun(false, [part]), remark };
}

/** The points of a group that repeats; undefined where a y is missing. */
function pointsOf(groups: Groups, code: number): Vector[] | undefined {
  const points: { x: number; y: number; z: number }[] = [];
  for (let i = groups.from; i < groups.to; i++) {
    const value = groups.values[i] as number;
    const last = points[points.length - 1];
    if (groups.codes[i] === code) points.push({ x: value, y: Number.NaN, z: 0 });
    else if (groups.codes[i] === code + 10 && last) last.y = value;
    else if (groups.codes[i] === code + 20 && last) last.z = value;
  }
  return points.some(({ y }) => Number.isNaN(y)) ? undefined : points.map(({ x, y, z }) => vector(x, y, z));
}

const flat = ({ x, y }: Vector) => ({ x, y });
