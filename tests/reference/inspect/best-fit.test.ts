import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, test } from 'vitest';
import type { Contour, Point, Region } from '../../../core/geometry/contour';
import { pointAlong } from '../../../core/geometry/along-segment';
import { num, tableOfRegion } from '../../../core/geometry/segment-table';
import { comparePoints, type FitChoice, type MeasuredPoint } from '../../../core/inspect/compare-points';
import { deviationAt, referenceOf } from '../../../core/inspect/deviation';
import { movedPoint } from '../../../core/inspect/motion';
import { seeded } from '../../../build/fuzz/random-contours';
import { angleShape, circle, roundedRectangle, square } from '../../support/shapes';

// Sources: a worked example of the linear least squares of eight probed points, derived in full beside it; closed forms;
// the library ml-levenberg-marquardt, which knows nothing of contours.

const free: FitChoice['freedom'] = { shiftX: true, shiftY: true, turn: true };
const choose = (change: Partial<FitChoice> = {}): FitChoice => ({
  method: 'least squares',
  freedom: free,
  outliers: 'keep',
  ...change,
});
const zone = { width: 0.02, outside: null };
const named = (points: readonly Point[]): readonly MeasuredPoint[] =>
  points.map((point, k) => ({ ...point, id: String(k + 1) }));

describe('eight points of a square ± 10', () => {
  // x, y and the deviation along the outward normal. Normal equations: Σd on right less left edge over 4 is the shift
  // a = (0.009 + 0.001 + 0.005 + 0.001) / 4 = 0.004; b = −0.002; turn Σ d·(lever) / Σ lever² = 0.0005.
  const probed: readonly (readonly [number, number, number])[] = [
    [10, -5, 0.009],
    [-5, 10, -0.004],
    [-10, -5, -0.005],
    [-5, -10, 0.004],
    [10, 5, 0.001],
    [5, 10, 0],
    [-10, 5, -0.001],
    [5, -10, 0],
  ];
  const points = named(
    probed.map(([x, y, d]) => ({
      x: Math.abs(x) === 10 ? x + Math.sign(x) * d : x,
      y: Math.abs(y) === 10 ? y + Math.sign(y) * d : y,
    })),
  );
  const profile: Region = [square(20, -10, -10)];

  test('least squares: the part lies 0.004, −0.002 off and turned by 0.0005; profile 0.0050, rms 0.001118', () => {
    const fit = comparePoints(points, profile, 'inside', choose(), zone);
    expect(fit.found.dx).toBeCloseTo(0.004, 5);
    expect(fit.found.dy).toBeCloseTo(-0.002, 5);
    expect(fit.found.turn).toBeCloseTo(0.0005, 6);
    expect(fit.profile).toBeCloseTo(0.005, 5);
    expect(fit.rms).toBeCloseTo(0.001118, 5);
    expect(fit.passes).toBe(true);
    expect(fit.points[fit.worst]?.id).toBe('1');
  });

  test('as measured: the deviations are those probed, and 2 · 0.009 is wider than 0.015', () => {
    const fit = comparePoints(points, profile, 'inside', choose({ method: 'as measured' }), {
      width: 0.015,
      outside: null,
    });
    fit.points.forEach(({ deviation }, k) => expect(deviation).toBeCloseTo(probed[k]?.[2] ?? NaN, 10));
    expect(fit.profile).toBeCloseTo(0.018, 10);
    expect(fit.passes).toBe(false);
  });

  test('without turning: the shift alone, residuals d − n · shift', () => {
    const fit = comparePoints(points, profile, 'inside', choose({ freedom: { ...free, turn: false } }), zone);
    expect(fit.found).toMatchObject({ turn: -0 });
    expect(fit.found.dx).toBeCloseTo(0.004, 9);
    expect(fit.points[0]?.deviation).toBeCloseTo(0.005, 9);
  });

  test('minimum zone: 0.0040, narrower than the least squares', () => {
    const squares = comparePoints(points, profile, 'inside', choose(), zone);
    const narrow = comparePoints(points, profile, 'inside', choose({ method: 'minimum zone' }), zone);
    expect(narrow.profile).toBeLessThanOrEqual(squares.profile + 1e-9);
    // Rows 1 and 3 are opposite with the same lever: shift and turn change them by as much in turn, so their sum,
    // 0.009 − 0.005, stays, and the larger is 0.002 at least. All rows keep within that, with a = 0.0045, b = −0.002
    // and a turn of 0.0005 for one.
    expect(narrow.profile).toBeCloseTo(0.004, 4);
  });
});

test('minimum zone of four points: the shift that makes opposite deviations equal', () => {
  // Right 0.010, left 0.002 outward: moved by −0.004 both keep 0.006. Up and down 0.001 and −0.003: moved to −0.001 each.
  const points = named([
    { x: 10.01, y: 1 },
    { x: -10.002, y: -2 },
    { x: 3, y: 10.001 },
    { x: -1, y: -9.997 },
  ]);
  const freedom = { ...free, turn: false };
  const fit = comparePoints(
    points,
    [square(20, -10, -10)],
    'inside',
    choose({ method: 'minimum zone', freedom }),
    zone,
  );
  expect(fit.profile).toBeCloseTo(0.012, 8);
  expect(fit.motion.dx).toBeCloseTo(-0.004, 8);
});

test('an unequal zone: 0.02 wide, 0.015 outside, is centred on +0.005', () => {
  const points = named([
    { x: 10.014, y: 1 },
    { x: -10.014, y: -2 },
    { x: 3, y: 9.996 },
    { x: -1, y: -9.996 },
  ]);
  const at = (outside: number | null) =>
    comparePoints(points, [square(20, -10, -10)], 'inside', choose({ method: 'as measured' }), {
      width: 0.02,
      outside,
    });
  expect(at(0.015)).toMatchObject({ passes: true });
  expect(at(0.015).profile).toBeCloseTo(2 * 0.009, 9);
  expect(at(null)).toMatchObject({ passes: false });
  expect(at(null).profile).toBeCloseTo(2 * 0.014, 9);
  // In a die opening the same points lie the other way: outside the opening is in the material.
  const die = comparePoints(
    points,
    [square(20, -10, -10)],
    'outside',
    choose({ method: 'as measured' }),
    zone,
  );
  expect(die.points[0]?.deviation).toBeCloseTo(-0.014, 9);
});

test('a circle: least squares finds the centre, and turning stays where it was', () => {
  const random = seeded(4);
  const points = named(
    Array.from({ length: 40 }, (_, k) => {
      const angle = (2 * Math.PI * k) / 40;
      const r = 5 + 0.002 * (random() - 0.5);
      return { x: 0.3 + r * Math.cos(angle), y: -0.2 + r * Math.sin(angle) };
    }),
  );
  const fit = comparePoints(points, [circle(5)], 'inside', choose(), zone);
  expect(fit.found.dx).toBeCloseTo(0.3, 3);
  expect(fit.found.dy).toBeCloseTo(-0.2, 3);
  expect(Math.abs(fit.motion.turn)).toBeLessThan(1e-4);
});

const shapes: Readonly<Record<string, Contour>> = {
  square: square(20, -10, -10),
  'rounded rectangle': roundedRectangle(30, 18, 3),
  angle: angleShape(20, 7),
};

describe.each(Object.entries(shapes))('%s against ml-levenberg-marquardt', (_name, contour) => {
  test.each([1, 2, 3])('the same shift, turn and sum of squares, draw %d', (draw) => {
    const random = seeded(100 + draw);
    const motion = {
      dx: 0.2 * (random() - 0.5),
      dy: 0.2 * (random() - 0.5),
      turn: 0.02 * (random() - 0.5),
      about: { x: 0, y: 0 },
    };
    const points = named(pointsOn(contour, 60, random).map((point) => movedPoint(motion, point)));
    const fit = comparePoints(points, [contour], 'inside', choose(), zone);
    const reference = referenceOf([contour], 'inside');
    const { about } = fit.motion;
    const theirs = levenbergMarquardt(
      { x: points.map((_, k) => k), y: points.map(() => 0) },
      ([dx = 0, dy = 0, turn = 0]) =>
        (k) =>
          deviationAt(reference, movedPoint({ dx, dy, turn, about }, points[k] as Point)).deviation,
      {
        initialValues: [0, 0, 0],
        gradientDifference: 1e-6,
        centralDifference: true,
        errorTolerance: 1e-30,
        maxIterations: 200,
        damping: 1e-6,
      },
    );
    const [dx, dy, turn] = theirs.parameterValues as [number, number, number];
    expect(fit.motion.dx).toBeCloseTo(dx, 6);
    expect(fit.motion.dy).toBeCloseTo(dy, 6);
    expect(fit.motion.turn).toBeCloseTo(turn, 7);
    const sum = fit.points.reduce((s, { deviation }) => s + deviation ** 2, 0);
    expect(sum).toBeLessThan(theirs.parameterError * (1 + 1e-6));
    expect(sum).toBeGreaterThan(theirs.parameterError * (1 - 1e-4));
  });

  test('a minimum zone that no small motion makes narrower, no wider than that of the least squares', () => {
    const random = seeded(9);
    const points = named(pointsOn(contour, 50, random));
    const reference = referenceOf([contour], 'inside');
    const narrow = comparePoints(points, [contour], 'inside', choose({ method: 'minimum zone' }), zone);
    const squares = comparePoints(points, [contour], 'inside', choose(), zone);
    expect(narrow.profile).toBeLessThanOrEqual(squares.profile);
    const widthAt = (dx: number, dy: number, turn: number) =>
      2 *
      Math.max(
        ...points.map((point) =>
          Math.abs(
            deviationAt(
              reference,
              movedPoint(
                {
                  ...narrow.motion,
                  dx: narrow.motion.dx + dx,
                  dy: narrow.motion.dy + dy,
                  turn: narrow.motion.turn + turn,
                },
                point,
              ),
            ).deviation,
          ),
        ),
      );
    expect(widthAt(0, 0, 0)).toBeCloseTo(narrow.profile, 12);
    for (let k = 0; k < 500; k++) {
      const size = 10 ** -(2 + 5 * random());
      const [dx, dy, turn] = [0, 0, 0].map(() => size * (2 * random() - 1)) as [number, number, number];
      expect(widthAt(dx, dy, turn / 10)).toBeGreaterThan(narrow.profile - 1e-7);
    }
  });
});

test('measured in another position: half way round and 40 mm away, the fit still finds it', () => {
  const random = seeded(31);
  const contour = angleShape(20, 7);
  for (const turn of [0.4, Math.PI / 2, 3, -2]) {
    const motion = { dx: 40, dy: -12, turn, about: { x: 3, y: 3 } };
    const points = named(pointsOn(contour, 80, random).map((point) => movedPoint(motion, point)));
    const fit = comparePoints(points, [contour], 'inside', choose(), zone);
    expect(fit.rms).toBeLessThan(0.003);
    expect(Math.cos(fit.found.turn - turn)).toBeCloseTo(1, 6);
  }
});

test('outliers: a burr of 0.2 is named, and left out it does not pull the fit', () => {
  const random = seeded(12);
  const contour = square(20, -10, -10);
  const points = [...named(pointsOn(contour, 60, random)), { x: 10.2, y: 3, id: 'burr' }];
  const left = comparePoints(points, [contour], 'inside', choose({ outliers: 'leave out' }), zone);
  expect(left.points.filter(({ isOutlier }) => isOutlier).map(({ id }) => id)).toEqual(['burr']);
  expect(left.counted).toBe(60);
  expect(left.profile).toBeLessThan(0.01);
  const kept = comparePoints(points, [contour], 'inside', choose(), zone);
  expect(kept.points.filter(({ isOutlier }) => isOutlier).map(({ id }) => id)).toEqual(['burr']);
  expect(kept.passes).toBe(false);
  expect(kept.points[kept.worst]?.id).toBe('burr');
});

/** Points all round a contour, up to 3 µm off it. */
function pointsOn(contour: Contour, count: number, random: () => number): Point[] {
  const table = tableOfRegion([contour]);
  const reference = referenceOf([contour], 'inside');
  const at = new Float64Array(2);
  return Array.from({ length: count }, (_, k) => {
    pointAlong(table, k % table.count, 0.05 + 0.9 * random(), at);
    const on = { x: num(at, 0), y: num(at, 1) };
    const { nx, ny } = deviationAt(reference, on);
    const d = 0.006 * (random() - 0.5);
    return { x: on.x + d * nx, y: on.y + d * ny };
  });
}
