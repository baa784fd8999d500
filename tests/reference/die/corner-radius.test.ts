import { describe, expect, it } from 'vitest';
import { cornerPlaces } from '../../../core/die/corner-places';
import { roundedOutline } from '../../../core/die/corner-rounding';
import type { Contour } from '../../../core/geometry/contour';
import { arcOf, contourArea } from '../../../core/geometry/contour-measures';
import { radians } from '../../../core/units';
import { clipperArea, clipperOpened } from '../../../build/fuzz/clipper-offset';
import { variants } from '../../support/contour-facts';
import { polygon } from '../../support/shapes';
import { randomContour, seeded } from '../../../build/fuzz/random-contours';

// Exact geometry, the same rows as for the remainder at a sharp inside corner, radius 0.15 mm: the arc begins
// r / tan(a/2) from the corner, leaves r(1/sin(a/2) − 1) along the bisector and r²(cot(a/2) − (π − a)/2) of area.
const rows = [
  { angle: 30, gap: 0.429555, tangent: 0.559808, area: 0.054519 },
  { angle: 45, gap: 0.241969, tangent: 0.362132, area: 0.027813 },
  { angle: 60, gap: 0.15, tangent: 0.259808, area: 0.015409 },
  { angle: 90, gap: 0.062132, tangent: 0.15, area: 0.004829 },
  { angle: 120, gap: 0.023205, tangent: 0.086603, area: 0.001209 },
  { angle: 135, gap: 0.012359, tangent: 0.062132, area: 0.000484 },
  { angle: 150, gap: 0.005291, tangent: 0.040192, area: 0.000138 },
];
const radius = 0.15;

/** A contour with one corner of the angle at the origin, its edges there 4 mm long. */
function cornered(angleDeg: number, kind: 'convex' | 'reflex'): Contour {
  const half = radians(angleDeg) / 2;
  const [across, up] = [4 * Math.sin(half), 4 * Math.cos(half)];
  return kind === 'convex'
    ? polygon([0, 0], [across, up], [0, 9], [-across, up])
    : polygon([-6, -3], [6, -3], [6, up], [across, up], [0, 0], [-across, up], [-6, up]);
}

describe('a radius at one corner', () => {
  for (const row of rows) {
    it(`${row.angle}°, convex and reflex`, () => {
      for (const kind of ['convex', 'reflex'] as const) {
        for (const contour of variants(cornered(row.angle, kind))) {
          const corner = cornerPlaces(contour).find(
            ({ angle, kind: is }) => is === kind && Math.abs(angle - radians(row.angle)) < 1e-9,
          );
          if (!corner) throw new Error('the corner is not found');
          const { contour: rounded, refused } = roundedOutline(contour, [{ place: corner, radius }]);
          expect(refused).toEqual([]);
          expect(rounded).toHaveLength(contour.length + 1);
          const at = rounded.findIndex(({ bulge }) => bulge !== 0);
          const [from, to] = [rounded[at], rounded[(at + 1) % rounded.length]];
          if (!from || !to) throw new Error('no arc');
          const arc = arcOf(from, to);
          expect(arc.radius).toBeCloseTo(radius, 9);
          expect(Math.sign(from.bulge)).toBe(kind === 'convex' ? 1 : -1);
          for (const end of [from, to])
            expect(Math.hypot(end.x - corner.at.x, end.y - corner.at.y)).toBeCloseTo(row.tangent, 6);
          expect(Math.hypot(arc.cx - corner.at.x, arc.cy - corner.at.y) - radius).toBeCloseTo(row.gap, 6);
          expect(Math.abs(contourArea(contour) - contourArea(rounded))).toBeCloseTo(row.area, 6);
        }
      }
    });
  }
});

// Exact geometry: a quarter disc of radius 10 about the origin. At (10, 0) its edge and its arc meet at 90°. A disc of
// radius r inside both has its centre at (√((10 − r)² − r²), r).
it('a radius between a line and an arc', () => {
  const quarterDisc: Contour = [
    { x: 0, y: 0, bulge: 0 },
    { x: 10, y: 0, bulge: Math.tan(Math.PI / 8) },
    { x: 0, y: 10, bulge: 0 },
  ];
  const corner = cornerPlaces(quarterDisc).find(({ at }) => at.x === 10);
  if (!corner) throw new Error('the corner is not found');
  const { contour } = roundedOutline(quarterDisc, [{ place: corner, radius: 1 }]);
  const arcs = contour.flatMap((from, i) =>
    from.bulge === 0 ? [] : [arcOf(from, contour[(i + 1) % contour.length] ?? from)],
  );
  const small = arcs.find((arc) => arc.radius < 2);
  expect(small?.radius).toBeCloseTo(1, 9);
  expect(small?.cx).toBeCloseTo(Math.sqrt(80), 9);
  expect(small?.cy).toBeCloseTo(1, 9);
  expect(arcs.find((arc) => arc.radius > 2)?.radius).toBeCloseTo(10, 9);
});

// clipper-lib, a general library: all convex corners rounded by r is the outline shrunk and grown again by r.
describe('a radius at every corner against clipper-lib', () => {
  for (const family of ['spiky star', 'gear', 'random arcs', 'rounded maze']) {
    it(family, () => {
      let compared = 0;
      for (let seed = 1; seed <= 20; seed++) {
        const contour = randomContour(family, seeded(seed));
        const corners = cornerPlaces(contour).map((place) => ({
          place,
          radius: place.kind === 'convex' ? 0.02 : 0,
        }));
        const rounded = roundedOutline(contour, corners, { convex: 0.02, reflex: 0 });
        // Where a radius does not fit, the opening takes what the corner keeps.
        if (rounded.refused.length > 0) continue;
        compared++;
        expect(contourArea(rounded.contour)).toBeCloseTo(openedArea(contour), 3);
      }
      expect(compared).toBeGreaterThan(5);
    });
  }
});

const openedArea = (contour: Contour): number =>
  clipperOpened([contour], 0.02, 1e-5).reduce((sum, path) => sum + clipperArea(path), 0);
