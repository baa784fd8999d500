import type { Point } from '../geometry/contour';

/**
 * The centre of an arc for a program, relative to its start, in whole steps of the number format; null where the arc
 * can't be told from a line. `from` and `to` are the arc's ends, already whole steps.
 *
 * The ends are rounded first, since the next move starts there. Of the four grid points about the exact centre the
 * one is taken whose distances to both ends agree best (then the nearest): a control refuses an arc whose radii
 * differ (RS274/NGC, NIST IR 6556: by more than 0.002 mm or 0.0002 in). They differ by less than 1.5 steps.
 */
export function roundArc(from: Point, to: Point, bulge: number): Point | null {
  const chord = { x: to.x - from.x, y: to.y - from.y };
  const length = Math.hypot(chord.x, chord.y);
  const sagitta = (Math.abs(bulge) * length) / 2;
  const radius = (length * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  // Half a step off the chord is what rounding does to a line anyway; a radius of a few steps has no usable centre.
  if (sagitta <= 0.5 || radius < leastRadius) return null;
  const lift = (1 - bulge * bulge) / (4 * bulge);
  const exact = { x: chord.x / 2 - chord.y * lift, y: chord.y / 2 + chord.x * lift };
  return bestOf(gridPointsAbout(exact), (centre) => [
    Math.abs(Math.hypot(centre.x, centre.y) - Math.hypot(chord.x - centre.x, chord.y - centre.y)),
    Math.hypot(centre.x - exact.x, centre.y - exact.y),
  ]);
}

/** In steps: 0.04 µm in a metric program. */
const leastRadius = 4;

/** Radii closer than this many steps are equal; the nearer centre then wins. */
const equalRadii = 1 / 1024;

function gridPointsAbout(point: Point): [Point, ...Point[]] {
  const [left, low] = [Math.floor(point.x), Math.floor(point.y)];
  return [
    { x: left, y: low },
    { x: left + 1, y: low },
    { x: left, y: low + 1 },
    { x: left + 1, y: low + 1 },
  ];
}

function bestOf(points: [Point, ...Point[]], cost: (point: Point) => [number, number]): Point {
  return points.reduce((best, point) => {
    const [radii, away] = cost(point);
    const [bestRadii, bestAway] = cost(best);
    if (Math.abs(radii - bestRadii) <= equalRadii) return away < bestAway ? point : best;
    return radii < bestRadii ? point : best;
  });
}
