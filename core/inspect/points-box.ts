import type { Box, Point } from '../geometry/contour';

/** The box of points, however many; upside down for none. */
export const pointsBox = (points: readonly Point[]): Box => ({
  minX: points.reduce((least, { x }) => Math.min(least, x), Infinity),
  minY: points.reduce((least, { y }) => Math.min(least, y), Infinity),
  maxX: points.reduce((most, { x }) => Math.max(most, x), -Infinity),
  maxY: points.reduce((most, { y }) => Math.max(most, y), -Infinity),
});
