import type { Point } from './contour';

/** A narrowest place: two points of a boundary that face each other, and how far apart they are, mm. */
export interface Width {
  readonly width: number;
  readonly from: Point;
  readonly to: Point;
}
