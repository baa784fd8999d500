import { describe, expect, it } from 'vitest';
import { contourArea, contourLength } from '../../../core/geometry/contour-measures';
import { drawn, line, type Groups } from './drawn';

const area = (entities: Groups): number => contourArea(drawn(entities).contours[0]?.contour ?? []);

const spline = (
  flags: number,
  degree: number,
  knots: readonly number[],
  points: readonly (readonly number[])[],
): Groups => [
  ...[0, 'SPLINE', 8, '0', 70, flags, 71, degree],
  ...knots.flatMap((knot) => [40, knot]),
  ...points.flatMap(([x = 0, y = 0]) => [10, x, 20, y]),
];

describe('splines of degree 1 to 11', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11])('degree %i: one span over its control polygon', (degree) => {
    // A Bézier curve of degree n with y by Bernstein polynomials over evenly spaced x: the area under it is the mean
    // of its control ordinates times the width (the integral of every Bernstein polynomial is 1/(n+1)).
    const points = Array.from({ length: degree + 1 }, (_, i) => [(20 * i) / degree, i % 2 === 0 ? 6 : 9]);
    const knots = [...new Array<number>(degree + 1).fill(0), ...new Array<number>(degree + 1).fill(1)];
    const under = (20 * points.reduce((sum, [, y = 0]) => sum + y, 0)) / (degree + 1);
    const lastY = points[degree]?.[1] ?? 0;
    const entities = [
      ...spline(8, degree, knots, points),
      ...line(20, lastY, 20, 0),
      ...line(20, 0, 0, 0),
      ...line(0, 0, 0, 6),
    ];
    const drawing = drawn(entities);
    const slack = contourLength(drawing.contours[0]?.contour ?? []) * drawing.largestFitError + 1e-9;
    expect(Math.abs(area(entities) - under)).toBeLessThan(slack);
  });
});

describe('closed splines', () => {
  const hexagon = Array.from({ length: 6 }, (_, i) => [
    10 * Math.cos((i * Math.PI) / 3),
    10 * Math.sin((i * Math.PI) / 3),
  ]);
  const even = (count: number): number[] => Array.from({ length: count }, (_, i) => i);

  it('whose points come round again without being written twice are the same as those written out', () => {
    const written = area(spline(11, 3, even(13), [...hexagon, ...hexagon.slice(0, 3)]));
    expect(area(spline(11, 3, even(13), hexagon))).toBeCloseTo(written, 9);
    // Not closed, the knots do not match the points and it is no curve.
    const open = drawn([...spline(8, 3, even(13), hexagon), ...[0, 'CIRCLE', 8, '0', 10, 0, 20, 0, 40, 50]]);
    expect(open.contours).toHaveLength(1);
    expect(open.unused[0]?.reason).toMatch(/do not match/);
  });

  it('of degree 2: a uniform quadratic over a regular polygon touches the middle of every side', () => {
    const drawing = drawn(spline(11, 2, even(6 + 2 * 2 + 1), hexagon));
    // The apothem of a hexagon of radius 10 is 10 cos 30°.
    expect(drawing.box.maxY).toBeCloseTo(10 * Math.cos(Math.PI / 6), 3);
    // Its area by parabolic segments: polygon of the side middles (radius 5√3) plus 2/3 of each corner triangle.
    const middles = 6 * 0.5 * (5 * Math.sqrt(3)) ** 2 * Math.sin(Math.PI / 3);
    const corner = 0.5 * 5 * 5 * Math.sin((2 * Math.PI) / 3);
    expect(Math.abs(area(spline(11, 2, even(11), hexagon)) - (middles + 6 * (2 / 3) * corner))).toBeLessThan(
      60 * drawing.largestFitError,
    );
  });
});
