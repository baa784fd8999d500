import { describe, expect, it } from 'vitest';
import { interpolatedSpline } from '../../../core/drawing/interpolated-spline';
import { splineCurves } from '../../../core/drawing/spline-curves';
import { contourArea } from '../../../core/geometry/contour-measures';
import { drawn, line, xy, type Groups } from './drawn';

const fitSpline = (flags: number, points: readonly (readonly number[])[], more: Groups = []): Groups => [
  ...[0, 'SPLINE', 8, '0', 70, flags, 71, 3, 74, points.length],
  ...more,
  ...points.flatMap(([x = 0, y = 0]) => [11, x, 21, y, 31, 0]),
];

const free = { isClosed: false, start: null, end: null };

describe('a spline by fit points only', () => {
  it('runs through its points; two points give the straight line between them', () => {
    const points = xy('0,0 3,4 9,1 12,6 20,2').map(([x = 0, y = 0]) => ({ x, y }));
    const spline = interpolatedSpline(points, free);
    if (!spline) throw new Error('no spline');
    const [curve] = splineCurves(spline);
    let along = 0;
    points.forEach((point, i) => {
      const before = points[i - 1];
      if (before) along += Math.hypot(point.x - before.x, point.y - before.y);
      expect(curve?.point(along).x).toBeCloseTo(point.x, 12);
      expect(curve?.point(along).y).toBeCloseTo(point.y, 12);
    });
    const two = drawn([...fitSpline(8, xy('0,0 10,0')), ...line(10, 0, 10, 5), ...line(10, 5, 0, 0)]);
    expect(contourArea(two.contours[0]?.contour ?? [])).toBeCloseTo(25, 12);
  });

  it('with both end directions reproduces a cubic: x = t, y = t³/100 at even chords is off by less than its spacing to the fourth', () => {
    // Clamped cubic interpolation errs by at most 5/384 h⁴ max|f⁗| (de Boor, A Practical Guide to Splines, ch. V): on a
    // quarter circle of radius 10 with 12 points the chord is 1.43 and |f⁗| = 1/R³.
    const count = 12;
    const at = (i: number): [number, number] => {
      const angle = (i * Math.PI) / 2 / (count - 1);
      return [10 * Math.cos(angle), 10 * Math.sin(angle)];
    };
    const points = Array.from({ length: count }, (_, i) => at(i));
    const spline = interpolatedSpline(
      points.map(([x, y]) => ({ x, y })),
      {
        isClosed: false,
        start: { x: 0, y: 3 },
        end: { x: -0.1, y: 0 },
      },
    );
    if (!spline) throw new Error('no spline');
    const [curve] = splineCurves(spline);
    if (!curve) throw new Error('no curve');
    const chord = 20 * Math.sin(Math.PI / 4 / (count - 1));
    const bound = (5 / 384) * chord ** 4 * (1 / 1000);
    for (let k = 0; k <= 200; k++) {
      const { x, y } = curve.point((curve.to * k) / 200);
      // Chord-length parameters are longer by their sagitta: that adds an error of the same order.
      expect(Math.abs(Math.hypot(x, y) - 10)).toBeLessThan(2 * bound);
    }
  });

  it('closed: the same curve wherever it begins, and near the circle through its points', () => {
    const ring = Array.from({ length: 16 }, (_, i) => [
      7 * Math.cos((i * Math.PI) / 8),
      7 * Math.sin((i * Math.PI) / 8),
    ]);
    const first = drawn(fitSpline(11, ring));
    const turned = drawn(fitSpline(11, [...ring.slice(5), ...ring.slice(0, 5)]));
    const areas = [first, turned].map(({ contours }) => contourArea(contours[0]?.contour ?? []));
    expect(Math.abs((areas[0] ?? 0) - (areas[1] ?? 0))).toBeLessThan(2 * 44 * first.largestFitError);
    expect(Math.abs((areas[0] ?? 0) - 49 * Math.PI)).toBeLessThan(0.05);
  });

  it('is told, with how its ends were taken', () => {
    const open = drawn([...fitSpline(8, xy('0,0 4,3 8,0')), ...line(8, 0, 0, 0)]);
    const say = open.findings.find(({ code }) => code === 'drawing-mended')?.message;
    expect(say).toMatch(/1 SPLINE on layer 0: given by fit points only.*natural ends/);
    const held = drawn([
      ...fitSpline(8, xy('0,0 4,3 8,0'), [12, 0, 22, 1, 13, 0, 23, -1]),
      ...line(8, 0, 0, 0),
    ]);
    expect(held.findings.find(({ code }) => code === 'drawing-mended')?.message).toMatch(
      /stated end directions/,
    );
    expect(contourArea(held.contours[0]?.contour ?? [])).toBeGreaterThan(
      contourArea(open.contours[0]?.contour ?? []),
    );
  });

  it('points drawn twice are one; nothing but one place is no curve', () => {
    const drawing = drawn([...fitSpline(8, xy('0,0 0,0 4,3 4,3 8,0')), ...line(8, 0, 0, 0)]);
    expect(drawing.contours).toHaveLength(1);
    expect(
      interpolatedSpline(
        [
          { x: 1, y: 1 },
          { x: 1, y: 1 },
        ],
        free,
      ),
    ).toBeNull();
  });
});
