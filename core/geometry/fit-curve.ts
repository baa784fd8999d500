import type { Point } from './contour';

/** A smooth curve: its direction never jumps between `from` and `to`. Corners belong between two curves. */
export interface FitCurve {
  readonly from: number;
  readonly to: number;
  /** Parameters strictly inside where a higher derivative may jump (the knots of a spline); rising. */
  readonly breaks: readonly number[];
  point(t: number): Point;
  /** Direction of travel, of any length but zero. */
  tangent(t: number): Point;
}
