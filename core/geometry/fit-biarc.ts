import type { Point, Vertex } from './contour';
import type { FitCurve } from './fit-curve';
import { largestDeviation, largestReach, type Arc } from './fit-deviation';
import { tolerance } from './tolerance';
import * as portable from './portable-math';

export interface FittedPair {
  /** The start of every arc; the end of the last is the curve's point at the span's end. */
  readonly vertices: readonly Vertex[];
  /** Largest distance between curve and arcs; Infinity where a sample is beyond the limit. */
  readonly error: number;
}

/**
 * The two arcs that leave the curve's start and reach its end in the curve's own directions and run tangent into
 * each other (a biarc), and how far the curve strays from them. Gives up (error Infinity) as soon as a sample is
 * farther than `limit`.
 *
 * The joints of all such pairs lie on the circle through both ends that turns by the whole turn of the curve: seen
 * from a joint the two chords turn by half of it. Of these the joint that lies on the curve itself is taken.
 *
 * Where no such pair exists (about a cusp, or over next to no chord) a line stands for the span, and its error is the
 * farthest that the curve gets from its start: small for a small span, whatever the curve does in it.
 */
export function fitBiarc(curve: FitCurve, from: number, to: number, limit: number): FittedPair {
  const start = curve.point(from);
  const end = curve.point(to);
  const startWay = unit(curve.tangent(from));
  const endWay = unit(curve.tangent(to));
  const chord = { x: end.x - start.x, y: end.y - start.y };
  const spot = (): FittedPair => ({
    vertices: [{ x: start.x, y: start.y, bulge: 0 }],
    error: largestReach(curve, from, to, limit),
  });
  if (Math.hypot(chord.x, chord.y) <= tolerance.samePoint) return spot();
  const leaving = turn(startWay, chord);
  const arriving = turn(chord, endWay);
  // Past a quarter turn to the chord an arc would exceed a half turn, and the nearest-arc rule below would not hold.
  if (Math.abs(leaving) > widest || Math.abs(arriving) > widest) return spot();
  const joint = jointOf(curve, from, to, start, end, leaving, arriving);
  const firstTurn = turn(startWay, { x: joint.x - start.x, y: joint.y - start.y });
  const lastTurn = turn({ x: end.x - joint.x, y: end.y - joint.y }, endWay);
  if (Math.abs(firstTurn) > widest || Math.abs(lastTurn) > widest) return spot();
  const first = arcFrom(start, startWay, joint, firstTurn);
  const jointWay = rotated(startWay, 2 * firstTurn);
  const last = arcFrom(joint, jointWay, end, lastTurn);
  const error = largestDeviation(curve, from, to, first, last, limit);
  return {
    vertices: [
      { x: start.x, y: start.y, bulge: flat(portable.tan(firstTurn / 2)) },
      { x: joint.x, y: joint.y, bulge: flat(portable.tan(lastTurn / 2)) },
    ],
    error,
  };
}

/** Arcs up to 160° each keep clear of the half turn, where the joint is no longer well placed. */
const widest = (80 * Math.PI) / 180;
const jointSearch = 44;

function jointOf(
  curve: FitCurve,
  from: number,
  to: number,
  start: Point,
  end: Point,
  leaving: number,
  arriving: number,
): Point {
  const half = (leaving + arriving) / 2;
  const onCircle = middleOfArc(start, end, portable.tan(half / 2));
  const joint = jointOnCurve(curve, from, to, start, end, half, leaving - half);
  if (!joint) return onCircle;
  // Nearly circular spans meet the joint circle anywhere, perhaps at an end: then its middle serves better.
  const chord = Math.hypot(end.x - start.x, end.y - start.y);
  const nearest = Math.min(
    Math.hypot(joint.x - start.x, joint.y - start.y),
    Math.hypot(joint.x - end.x, joint.y - end.y),
  );
  return nearest < chord / 8 ? onCircle : joint;
}

/**
 * Where the curve crosses the circle of joints: where the chords to both ends turn by `half`. The turn is closed in on
 * between both ends by the secant, an end that stays twice being counted for half (the Illinois rule); null where it does not
 * change sides.
 */
function jointOnCurve(
  curve: FitCurve,
  from: number,
  to: number,
  start: Point,
  end: Point,
  half: number,
  atStart: number,
): Point | null {
  if (atStart === 0) return null;
  let [low, high] = [from, to];
  // At the very ends one of the chords vanishes: the turns there are those of the tangents.
  let [lowValue, highValue] = [atStart, -atStart];
  let joint = curve.point((low + high) / 2);
  let stayed = 0;
  for (let i = 0; i < jointSearch; i++) {
    const share = i < 2 ? 1 / 2 : lowValue / (lowValue - highValue);
    const at = low + (high - low) * share;
    joint = curve.point(at);
    const toJoint = { x: joint.x - start.x, y: joint.y - start.y };
    const toEnd = { x: end.x - joint.x, y: end.y - joint.y };
    const value = turn(toJoint, toEnd) - half;
    if (Math.abs(value) <= jointTurn) break;
    if (Math.sign(value) === Math.sign(atStart)) {
      [low, lowValue] = [at, value];
      if (stayed > 0) highValue /= 2;
      stayed = 1;
    } else {
      [high, highValue] = [at, value];
      if (stayed < 0) lowValue /= 2;
      stayed = -1;
    }
  }
  return joint;
}

/** The turn at a joint is exact to this, radians: a thousandth of what counts as tangent. */
const jointTurn = tolerance.tangentAngle / 1000;

/** Middle of the arc over a chord: beside the chord's middle by bulge · chord / 2, to the right of travel. */
function middleOfArc(from: Point, to: Point, bulge: number): Point {
  return {
    x: (from.x + to.x) / 2 + (bulge / 2) * (to.y - from.y),
    y: (from.y + to.y) / 2 - (bulge / 2) * (to.x - from.x),
  };
}

/** The arc that leaves a point in a direction and turns by `chordTurn` to its chord (twice that in all). */
function arcFrom(from: Point, way: Point, to: Point, chordTurn: number): Arc {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  return {
    x: from.x,
    y: from.y,
    wayX: way.x,
    wayY: way.y,
    curvature: (2 * portable.sin(chordTurn)) / chord,
    endX: to.x,
    endY: to.y,
  };
}

const flat = (bulge: number): number => (Math.abs(bulge) < tolerance.straightBulge ? 0 : bulge);
const turn = (a: Point, b: Point): number => portable.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
const rotated = (way: Point, angle: number): Point => ({
  x: way.x * portable.cos(angle) - way.y * portable.sin(angle),
  y: way.x * portable.sin(angle) + way.y * portable.cos(angle),
});
function unit(way: Point): Point {
  const length = Math.hypot(way.x, way.y);
  return { x: way.x / length, y: way.y / length };
}
