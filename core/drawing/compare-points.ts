import type { Point } from '../geometry/contour';

/** By x, then y; 0 where one is missing. */
export const comparePoints = (a: Point | undefined, b: Point | undefined): number =>
  a && b ? a.x - b.x || a.y - b.y : 0;
