import { expect, it } from 'vitest';
import { cornerPlaces, type CornerPlace } from '../../../core/die/corner-places';
import { roundedOutline } from '../../../core/die/corner-rounding';
import type { Contour } from '../../../core/geometry/contour';
import { arcOf, contourArea } from '../../../core/geometry/contour-measures';
import { angleShape, circle, polygon, roundedRectangle, roundedSlot, square } from '../../support/shapes';

const at = (places: readonly CornerPlace[], x: number, y: number): CornerPlace => {
  const found = places.find((place) => Math.hypot(place.at.x - x, place.at.y - y) < 1e-6);
  if (!found) throw new Error(`no corner at ${x}, ${y}`);
  return found;
};
const radiiOf = (contour: Contour): number[] =>
  contour.flatMap((from, i) =>
    from.bulge === 0 ? [] : [arcOf(from, contour[(i + 1) % contour.length] ?? from).radius],
  );

it('finds sharp corners and drawn radii, and no corner in a circle or at the end of a slot', () => {
  const shape = angleShape(10, 4);
  expect(cornerPlaces(shape).map(({ kind }) => kind)).toEqual([
    'convex',
    'convex',
    'convex',
    'reflex',
    'convex',
    'convex',
  ]);
  const rounded = cornerPlaces(roundedRectangle(20, 10, 0.5));
  expect(rounded).toHaveLength(4);
  for (const place of rounded) {
    expect(place.drawnRadius).toBeCloseTo(0.5, 12);
    expect(place.angle).toBeCloseTo(Math.PI / 2, 12);
  }
  expect(cornerPlaces(circle(3))).toEqual([]);
  expect(cornerPlaces(roundedSlot(8, 2))).toEqual([]);
});

it('each corner has its own radius, and everything else stays as it was', () => {
  const shape = angleShape(10, 4);
  const places = cornerPlaces(shape);
  const { contour, refused } = roundedOutline(shape, [
    { place: at(places, 0, 0), radius: 1 },
    { place: at(places, 10, 0), radius: 0.5 },
    { place: at(places, 4, 4), radius: 2 },
  ]);
  expect(refused).toEqual([]);
  expect(radiiOf(contour).map((radius) => Number(radius.toFixed(9)))).toEqual(
    expect.arrayContaining([1, 0.5, 2]),
  );
  expect(contour).toHaveLength(9);
  for (const [x, y] of [
    [10, 4],
    [4, 10],
    [0, 10],
  ] as const)
    expect(contour).toContainEqual({ x, y, bulge: 0 });
  // A square corner loses r²(1 − π/4), a reflex one gains it.
  const share = 1 - Math.PI / 4;
  expect(contourArea(contour)).toBeCloseTo(64 - share * (1 + 0.25) + share * 4, 9);
});

it('a drawn radius grows into a larger one and never becomes smaller', () => {
  const drawn = roundedRectangle(20, 10, 0.5);
  const corners = cornerPlaces(drawn).map((place, k) => ({ place, radius: k === 0 ? 2 : 0.3 }));
  const { contour } = roundedOutline(drawn, corners);
  expect(
    radiiOf(contour)
      .map((radius) => Number(radius.toFixed(9)))
      .sort(),
  ).toEqual([0.5, 0.5, 0.5, 2]);
});

it('a tongue narrower than the disc keeps its end: the radius is refused there', () => {
  const tongue = polygon([0, 0], [10, 0], [10, 5], [6, 5], [6, 9], [5, 9], [5, 5], [0, 5]);
  const places = cornerPlaces(tongue);
  const end = [at(places, 6, 9), at(places, 5, 9)];
  const narrow = roundedOutline(
    tongue,
    end.map((place) => ({ place, radius: 0.6 })),
  );
  expect(narrow.contour).toEqual(tongue);
  expect(narrow.refused.map(({ place }) => place)).toEqual(end);
  // Half its width makes the end round, which just fits.
  const round = roundedOutline(
    tongue,
    end.map((place) => ({ place, radius: 0.49 })),
  );
  expect(round.refused).toEqual([]);
  expect(contourArea(tongue) - contourArea(round.contour)).toBeCloseTo(2 * (1 - Math.PI / 4) * 0.49 ** 2, 9);
});

it('two radii that need the same stretch of an edge: the larger one stays, the other is refused', () => {
  const step = polygon([0, 0], [10, 0], [10, 5], [5, 5], [5, 6], [0, 6]);
  const places = cornerPlaces(step);
  const [reflex, convex] = [at(places, 5, 5), at(places, 5, 6)];
  const both = roundedOutline(step, [
    { place: reflex, radius: 0.7 },
    { place: convex, radius: 0.4 },
  ]);
  expect(both.refused.map(({ place }) => place)).toEqual([convex]);
  expect(radiiOf(both.contour).map((radius) => Number(radius.toFixed(9)))).toEqual([0.7]);
  const fitting = roundedOutline(step, [
    { place: reflex, radius: 0.6 },
    { place: convex, radius: 0.4 },
  ]);
  expect(fitting.refused).toEqual([]);
  expect(fitting.contour.filter(({ bulge }) => bulge !== 0)).toHaveLength(2);
});

it('what bends like a corner but is none follows the rule for all, and a corner its own', () => {
  // A tip of two arcs of 0.2 that make a quarter turn together: neither is a corner by itself.
  const eighth = Math.tan(Math.PI / 16);
  const [r, c] = [0.2, 0.2 * Math.SQRT1_2];
  const tip: Contour = [
    { x: 0, y: 0, bulge: 0 },
    { x: 10 - r, y: 0, bulge: eighth },
    { x: 10 - r + c, y: r - c, bulge: eighth },
    { x: 10, y: r, bulge: 0 },
    { x: 10, y: 10, bulge: 0 },
    { x: 0, y: 10, bulge: 0 },
  ];
  const places = cornerPlaces(tip);
  expect(places).toHaveLength(3);
  const corners = places.map((place) => ({ place, radius: 0 }));
  const { contour } = roundedOutline(tip, corners, { convex: 1, reflex: 0 });
  expect(radiiOf(contour).map((radius) => Number(radius.toFixed(9)))).toEqual([1]);
  expect(roundedOutline(tip, corners).contour).toBe(tip);
});

it('a radius that takes the whole contour is refused', () => {
  const small = square(1);
  const corners = cornerPlaces(small).map((place) => ({ place, radius: 2 }));
  const { contour, refused } = roundedOutline(small, corners);
  expect(contour).toEqual(small);
  expect(refused).toHaveLength(4);
});
