import type { Point } from './contour';
import { pointAlong } from './along-segment';
import { num, type SegmentTable } from './segment-table';
import * as portable from './portable-math';

/**
 * A stretch of a segment as a rational curve over t from −1 to 1: (x, y) = middle + (X(t), Y(t)) / W(t) with
 * W = 1 + w2·t², X = x1·t + x2·t², likewise Y (for an arc t is the tangent of a quarter of the angle from its middle, as a share
 * of the bulge). Measured from its middle, so that a small stretch keeps all digits wherever it lies. The squared
 * distance from the middle is q2·t² / W.
 */
export interface Carrier {
  readonly table: SegmentTable;
  readonly segment: number;
  /** Fractions of the segment at t = −1 and t = 1. */
  readonly from: number;
  readonly to: number;
  readonly middle: Point;
  readonly x1: number;
  readonly x2: number;
  readonly y1: number;
  readonly y2: number;
  readonly w2: number;
  readonly q2: number;
  /** mm. */
  readonly length: number;
}

export function carrierOf(table: SegmentTable, segment: number, from: number, to: number): Carrier {
  const at = new Float64Array(2);
  pointAlong(table, segment, (from + to) / 2, at);
  const middle = { x: num(at, 0), y: num(at, 1) };
  const radius = num(table.radius, segment);
  const whole = { table, segment, from, to, middle };
  if (radius === 0) {
    const x1 = ((num(table.x1, segment) - num(table.x0, segment)) * (to - from)) / 2;
    const y1 = ((num(table.y1, segment) - num(table.y0, segment)) * (to - from)) / 2;
    return { ...whole, x1, x2: 0, y1, y2: 0, w2: 0, q2: x1 * x1 + y1 * y1, length: 2 * Math.hypot(x1, y1) };
  }
  const angle = 4 * portable.atan(num(table.bulge, segment)) * (to - from);
  const b = portable.tan(angle / 4);
  const ux = (middle.x - num(table.cx, segment)) / radius;
  const uy = (middle.y - num(table.cy, segment)) / radius;
  const k = -2 * radius * b;
  return {
    ...whole,
    x1: k * uy,
    x2: k * b * ux,
    y1: -k * ux,
    y2: k * b * uy,
    w2: b * b,
    q2: k * k,
    length: radius * Math.abs(angle),
  };
}

/** The fraction of the segment at t. */
export function fractionAt(carrier: Carrier, t: number): number {
  const { from, to, w2 } = carrier;
  const b = Math.sqrt(w2);
  const share = b === 0 ? t : portable.atan(b * t) / portable.atan(b);
  return (from + to) / 2 + (share * (to - from)) / 2;
}
