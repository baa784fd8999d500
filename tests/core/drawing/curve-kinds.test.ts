import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../core/drawing/drawing';
import { contourArea, contourLength } from '../../../core/geometry/contour-measures';
import { tolerance } from '../../../core/geometry/tolerance';
import { drawn, line, xy, type Groups } from './drawn';

const areaOf = ({ contours }: Drawing): number => contourArea(contours[0]?.contour ?? []);
/** What the reported error allows the area to be off by: the length times the error. */
const areaSlack = ({ contours, largestFitError }: Drawing): number =>
  contourLength(contours[0]?.contour ?? []) * largestFitError;

const points = (text: string): Groups =>
  xy(text).flatMap(([x = 0, y = 0, weight]) => [10, x, 20, y, ...(weight === undefined ? [] : [41, weight])]);
const spline = (degree: number, knots: string, at: Groups): Groups => [
  ...[0, 'SPLINE', 8, '0', 70, 8, 71, degree],
  ...knots.split(' ').flatMap((knot) => [40, knot]),
  ...at,
];
const ellipse = (major: readonly [number, number], ratio: number, to: number, z = 1): Groups => [
  ...[0, 'ELLIPSE', 8, '0', 10, 0, 20, 0, 11, major[0], 21, major[1], 210, 0, 220, 0, 230, z],
  ...[40, ratio, 41, 0, 42, to],
];

describe('ELLIPSE', () => {
  it('whole: π a b, its error no larger than what is reported', () => {
    const drawing = drawn(ellipse([12, 9], 0.4, 2 * Math.PI));
    expect(drawing.largestFitError).toBeGreaterThan(0);
    expect(drawing.largestFitError).toBeLessThanOrEqual(tolerance.curveFit);
    // Semi-axes 15 and 6.
    expect(Math.abs(areaOf(drawing) - Math.PI * 90)).toBeLessThan(areaSlack(drawing));
    expect(drawing.findings.map(({ code, weight }) => `${weight} ${code}`)).toEqual(['note curve-fitted']);
  });

  it('half, and the other half by extrusion (0, 0, −1)', () => {
    for (const [z, side] of [
      [1, 'minY'],
      [-1, 'maxY'],
    ] as const) {
      const drawing = drawn([...ellipse([5, 0], 0.5, Math.PI, z), ...line(-5, 0, 5, 0)]);
      expect(drawing.box[side]).toBeCloseTo(0, 9);
      expect(Math.abs(areaOf(drawing) - (Math.PI * 12.5) / 2)).toBeLessThan(areaSlack(drawing));
    }
  });

  it('with equal half-diameters is a circle, exactly', () => {
    const drawing = drawn(ellipse([3, 4], 1, 2 * Math.PI));
    expect(areaOf(drawing)).toBeCloseTo(25 * Math.PI, 12);
    expect(drawing.largestFitError).toBe(0);
  });
});

describe('SPLINE', () => {
  it('of degree 1 is its polygon', () => {
    const drawing = drawn(spline(1, '0 0 1 2 3 4 4', points('0,0 4,0 4,3 0,3 0,0')));
    expect(areaOf(drawing)).toBeCloseTo(12, 12);
    expect(drawing.contours[0]?.contour).toHaveLength(4);
  });

  it('of degree 2 and rational is a circle, exactly', () => {
    // The circle as nine weighted points: Piegl & Tiller, The NURBS Book, example 7.2 (weights 1 and √2/2).
    const w = Math.SQRT1_2;
    const ring = `7,0,1 7,7,${w} 0,7,1 -7,7,${w} -7,0,1 -7,-7,${w} 0,-7,1 7,-7,${w} 7,0,1`;
    const drawing = drawn(spline(2, '0 0 0 1 1 2 2 3 3 4 4 4', points(ring)));
    expect(areaOf(drawing)).toBeCloseTo(49 * Math.PI, 9);
    expect(drawing.contours[0]?.contour).toHaveLength(2);
    // Without its weights it would hold less: the trap this test is for.
    const bare = drawn(spline(2, '0 0 0 1 1 2 2 3 3 4 4 4', points(ring.replace(/,[\d.]+(?= |$)/g, ''))));
    expect(Math.abs(areaOf(bare) - 49 * Math.PI)).toBeGreaterThan(1);
  });

  it('of degree 3, one span and its chord: the area under a Bézier curve', () => {
    const drawing = drawn([...spline(3, '0 0 0 0 1 1 1 1', points('0,0 0,4 6,4 6,0')), ...line(0, 0, 6, 0)]);
    expect(Math.abs(areaOf(drawing) - bezierArea(xy('0,0 0,4 6,4 6,0')))).toBeLessThan(areaSlack(drawing));
  });

  it('of degree 5 with a corner at a knot as manifold as the degree', () => {
    const knots = '0 0 0 0 0 0 1 1 1 1 1 2 2 2 2 2 2';
    const drawing = drawn([
      ...spline(5, knots, points('0,0 1,0 2,0 3,0 4,0 5,0 5,1 5,2 5,3 5,4 5,5')),
      ...line(5, 5, 0, 0),
    ]);
    expect(areaOf(drawing)).toBeCloseTo(12.5, 9);
    expect(drawing.contours[0]?.contour).toHaveLength(3);
  });

  it('unclamped: a closed uniform cubic over a hexagon runs on its own domain only', () => {
    const at = Array.from({ length: 9 }, (_, i) => (i * Math.PI) / 3);
    const hexagon = at.flatMap((turn) => [10, 10 * Math.cos(turn), 20, 10 * Math.sin(turn)]);
    const drawing = drawn(spline(3, '0 1 2 3 4 5 6 7 8 9 10 11 12', hexagon));
    expect(drawing.contours).toHaveLength(1);
    // Uniform cubic B-spline at a knot: (P₋₁ + 4 P₀ + P₁) / 6, here at radius 10 (4 + 2 cos 60°) / 6 = 25/3.
    expect(drawing.box.maxX).toBeCloseTo(25 / 3, 3);
    expect(drawing.box.minX).toBeCloseTo(-25 / 3, 3);
  });

  it('whose first control points coincide still has a direction there', () => {
    const drawing = drawn([...spline(3, '0 0 0 0 1 1 1 1', points('0,0 0,0 6,4 6,0')), ...line(0, 0, 6, 0)]);
    expect(Math.abs(areaOf(drawing) - bezierArea(xy('0,0 0,0 6,4 6,0')))).toBeLessThan(areaSlack(drawing));
  });
});

/** Exact area between a cubic Bézier curve and the x axis: Gauss quadrature of y dx, a polynomial of degree 5. */
function bezierArea(corners: readonly (readonly number[])[]): number {
  const at = (t: number, k: 0 | 1) => {
    const [a = 0, b = 0, c = 0, d = 0] = corners.map((point) => point[k] ?? 0);
    const value = a * (1 - t) ** 3 + 3 * b * t * (1 - t) ** 2 + 3 * c * t * t * (1 - t) + d * t ** 3;
    const slope = 3 * ((b - a) * (1 - t) ** 2 + 2 * (c - b) * t * (1 - t) + (d - c) * t * t);
    return { value, slope };
  };
  const far = Math.sqrt(3 / 5) / 2;
  const nodes = [
    [0.5 - far, 5 / 18],
    [0.5, 8 / 18],
    [0.5 + far, 5 / 18],
  ] as const;
  return nodes.reduce((sum, [t, weight]) => sum + weight * at(t, 1).value * at(t, 0).slope, 0);
}
