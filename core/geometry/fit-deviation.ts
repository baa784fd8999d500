import type { Point } from './contour';
import type { FitCurve } from './fit-curve';

/** An arc by its start, its direction there (unit) and its curvature (counter-clockwise positive, 0 a line). */
export interface Arc {
  readonly x: number;
  readonly y: number;
  readonly wayX: number;
  readonly wayY: number;
  readonly curvature: number;
  readonly endX: number;
  readonly endY: number;
}

/**
 * Largest distance between a span of a curve and the two tangent arcs that stand for it; Infinity as soon as a
 * sample is farther than `limit`. The span is sampled between its breaks, and every local extremum among the samples
 * is closed in on by golden section, so that the value is the true maximum and not the largest sample.
 */
export function largestDeviation(
  curve: FitCurve,
  from: number,
  to: number,
  first: Arc,
  last: Arc,
  limit: number,
): number {
  return largestValue(curve, from, to, limit, (t) => Math.abs(signedDistance(curve.point(t), first, last)));
}

/** The farthest that a span of a curve gets from where it starts; Infinity as soon as a sample is beyond `limit`. */
export function largestReach(curve: FitCurve, from: number, to: number, limit: number): number {
  const start = curve.point(from);
  return largestValue(curve, from, to, limit, (t) => {
    const { x, y } = curve.point(t);
    return Math.hypot(x - start.x, y - start.y);
  });
}

function largestValue(
  curve: FitCurve,
  from: number,
  to: number,
  limit: number,
  deviation: (t: number) => number,
): number {
  const samples = sampleParameters(curve, from, to);
  const values: number[] = [];
  for (const t of samples) {
    const value = deviation(t);
    if (value > limit) return Infinity;
    values.push(value);
  }
  let largest = 0;
  for (const value of values) if (value > largest) largest = value;
  const worthLooking = largest * lowestPeak;
  for (let i = 0; i < samples.length; i++) {
    const value = values[i] as number;
    const before = values[i - 1] ?? -1;
    const after = values[i + 1] ?? -1;
    if (value < before || value < after || value < worthLooking) continue;
    const low = samples[i - 1] ?? from;
    const high = samples[i + 1] ?? to;
    largest = Math.max(largest, peakBetween(deviation, low, high));
    if (largest > limit) return Infinity;
  }
  return largest;
}

/** A biarc over a smooth span has some six lobes of error: four samples each. */
const wantedSamples = 24;
const fewestPerStretch = 6;
/** With four samples to a lobe one of them reaches nine tenths of its peak: the highest peak is among those above this. */
const lowestPeak = 0.75;
/** To a 300th of the step between samples, which tells the height of a peak to a hundred-thousandth. */
const goldenSteps = 12;
const golden = (Math.sqrt(5) - 1) / 2;

function sampleParameters(curve: FitCurve, from: number, to: number): number[] {
  const stops = [from, ...breaksBetween(curve.breaks, from, to), to];
  const each = Math.max(fewestPerStretch, Math.ceil(wantedSamples / (stops.length - 1)));
  const samples = [from];
  for (let i = 0; i + 1 < stops.length; i++) {
    const low = stops[i] as number;
    const high = stops[i + 1] as number;
    for (let k = 1; k <= each; k++) samples.push(low + ((high - low) * k) / each);
  }
  return samples;
}

/** The breaks strictly between two parameters: they rise, so the first is found by halving. */
function breaksBetween(breaks: readonly number[], from: number, to: number): readonly number[] {
  let low = 0;
  let high = breaks.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((breaks[middle] as number) <= from) low = middle + 1;
    else high = middle;
  }
  let end = low;
  while (end < breaks.length && (breaks[end] as number) < to) end++;
  return breaks.slice(low, end);
}

/** The largest value of a function with one peak between two parameters. */
function peakBetween(value: (t: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  let left = high - golden * (high - low);
  let right = low + golden * (high - low);
  let atLeft = value(left);
  let atRight = value(right);
  for (let i = 0; i < goldenSteps; i++) {
    if (atLeft < atRight) {
      low = left;
      left = right;
      atLeft = atRight;
      right = low + golden * (high - low);
      atRight = value(right);
    } else {
      high = right;
      right = left;
      atRight = atLeft;
      left = high - golden * (high - low);
      atLeft = value(left);
    }
  }
  return Math.max(atLeft, atRight);
}

/** Distance to the arc that the point faces: the line across the joint, square to the direction there, divides them. */
function signedDistance(point: Point, first: Arc, last: Arc): number {
  const ahead = (point.x - last.x) * last.wayX + (point.y - last.y) * last.wayY;
  return ahead < 0 ? distanceToCarrier(point, first) : distanceToCarrier(point, last);
}

/**
 * Signed distance to an arc's circle or line, positive to the left of travel. With q from the arc's start, n its left
 * normal and k its curvature: f = q·n − k q²/2, distance = 2 f / (1 + √(1 − 2 k f)); no digits are lost as k → 0.
 */
function distanceToCarrier(point: Point, arc: Arc): number {
  const qx = point.x - arc.x;
  const qy = point.y - arc.y;
  const f = qy * arc.wayX - qx * arc.wayY - (arc.curvature / 2) * (qx * qx + qy * qy);
  return (2 * f) / (1 + Math.sqrt(Math.max(0, 1 - 2 * arc.curvature * f)));
}
