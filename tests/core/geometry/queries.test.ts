import ClipperLib from 'clipper-lib';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { describe, expect, it } from 'vitest';
import type { Contour, Point } from '../../../core/geometry/contour';
import { reversedContour } from '../../../core/geometry/contour-measures';
import { firstHit } from '../../../core/geometry/first-hit';
import { nearestPoint, signedDistance } from '../../../core/geometry/nearest-point';
import { indexOf } from '../../../core/geometry/segment-index';
import { tableOfRegion } from '../../../core/geometry/segment-table';
import { isInside } from '../../../core/geometry/winding';
import { clipperScale, flattened } from '../../../build/fuzz/clipper-offset';
import { bruteDistance, pointsAlong } from '../../support/contour-facts';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import { circle, polygon, roundedSlot, square } from '../../support/shapes';

const indexed = (...contours: Contour[]) => indexOf(tableOfRegion(contours));

describe('nearestPoint and signedDistance', () => {
  it('a square: positive inside, negative outside, and the foot', () => {
    const index = indexed(square(10));
    expect(signedDistance(index, { x: 5, y: 3 })).toBe(3);
    expect(signedDistance(index, { x: 13, y: 14 })).toBe(-5);
    expect(nearestPoint(index, { x: 5, y: 3 })).toEqual({ segment: 0, along: 0.5, x: 5, y: 0, distance: 3 });
    expect(nearestPoint(index, { x: 13, y: 14 })).toMatchObject({ x: 10, y: 10, distance: 5 });
    expect(nearestPoint(index, { x: 5, y: 3 }, 2.9)).toBeNull();
    expect(nearestPoint(index, { x: 5, y: 3 }, 3)?.distance).toBe(3);
  });

  it('a ring: the hole is outside, and the middle of a circle is as far from all of it', () => {
    const index = indexed(circle(5), reversedContour(circle(2)));
    expect(signedDistance(index, { x: 0, y: 0 })).toBeCloseTo(-2, 12);
    expect(signedDistance(index, { x: 0, y: 3 })).toBeCloseTo(1, 12);
    expect(nearestPoint(index, { x: 3, y: 4 })).toMatchObject({ distance: 0 });
    expect(nearestPoint(index, { x: 30, y: 40 })?.x).toBeCloseTo(3, 12);
  });

  it('nothing is near where there is nothing', () => {
    expect(nearestPoint(indexed(), { x: 0, y: 0 })).toBeNull();
    expect(signedDistance(indexed(), { x: 0, y: 0 })).toBe(-Infinity);
    expect(firstHit(indexed(), { x: 0, y: 0 }, { x: 1, y: 0 })).toBeNull();
  });

  for (const family of Object.keys(families)) {
    it(`${family}: brute force agrees, and the foot lies on the contour at that distance`, () => {
      for (let seed = 1; seed <= 12; seed++) {
        const random = seeded(seed * 7727);
        const contour = randomContour(family, random);
        const index = indexed(contour);
        for (const point of testPoints(contour, random)) {
          const expected = bruteDistance([contour], point.x, point.y);
          const found = nearestPoint(index, point);
          expect(Math.abs((found?.distance ?? NaN) - expected)).toBeLessThan(1e-12);
          expect(Math.abs(Math.abs(signedDistance(index, point)) - expected)).toBeLessThan(1e-12);
          const foot = found ?? { x: NaN, y: NaN };
          expect(bruteDistance([contour], foot.x, foot.y)).toBeLessThan(1e-12);
          expect(Math.abs(Math.hypot(foot.x - point.x, foot.y - point.y) - expected)).toBeLessThan(1e-12);
        }
      }
    });
  }

  // Independent routes: jsts 2.12 (JTS, distance of a point to a ring) and clipper-lib 6.4.2 (point in polygon), on chords.
  it('jsts and clipper-lib agree on distance and side within the chord error', () => {
    for (const family of Object.keys(families)) {
      for (let seed = 1; seed <= 4; seed++) {
        const random = seeded(seed * 104_729 + family.length);
        const contour = randomContour(family, random);
        const index = indexed(contour);
        const path = flattened(contour, chord);
        const ring = lineString(
          [...path, ...path.slice(0, 1)].map(({ X, Y }) => [X / clipperScale, Y / clipperScale]),
        );
        for (const point of testPoints(contour, random)) {
          const distance = signedDistance(index, point);
          const theirs = DistanceOp.distance(factory.createPoint(new Coordinate(point.x, point.y)), ring);
          expect(Math.abs(Math.abs(distance) - (theirs as number))).toBeLessThan(1.5 * chord);
          if (Math.abs(distance) < 2 * chord) continue;
          const grid = { X: Math.round(point.x * clipperScale), Y: Math.round(point.y * clipperScale) };
          expect(distance > 0).toBe(ClipperLib.Clipper.PointInPolygon(grid, path) === 1);
          expect(distance > 0).toBe(isInside([contour], point.x, point.y));
        }
      }
    }
  });
});

describe('firstHit', () => {
  it('meets lines, arcs and corners, from inside and from outside', () => {
    const slot = indexed(roundedSlot(10, 2));
    expect(firstHit(slot, { x: 5, y: 0 }, { x: 0, y: 3 })).toMatchObject({ x: 5, y: 2, distance: 2 });
    expect(firstHit(slot, { x: 5, y: 0 }, { x: 0.1, y: 0 })?.x).toBeCloseTo(12, 12);
    expect(firstHit(slot, { x: 20, y: 0 }, { x: -1, y: 0 })?.distance).toBeCloseTo(8, 12);
    expect(firstHit(slot, { x: 20, y: 0 }, { x: 1, y: 0 })).toBeNull();
    const box = indexed(square(10));
    expect(firstHit(box, { x: 5, y: 5 }, { x: 1, y: 1 })?.distance).toBeCloseTo(5 * Math.SQRT2, 12);
    expect(firstHit(box, { x: -5, y: 0 }, { x: 1, y: 0 })).toMatchObject({ x: 0, y: 0, distance: 5 });
    expect(firstHit(box, { x: 5, y: 5 }, { x: 0, y: 0 })).toBeNull();
  });

  it('a start on the boundary is a hit, unless the hit is asked for farther on', () => {
    const box = indexed(square(10));
    expect(firstHit(box, { x: 0, y: 4 }, { x: 1, y: 0 })?.distance).toBe(0);
    expect(firstHit(box, { x: 0, y: 4 }, { x: 1, y: 0 }, 0.001)).toMatchObject({ x: 10, y: 4, distance: 10 });
    expect(firstHit(box, { x: 0, y: 4 }, { x: -1, y: 0 }, 0.001)).toBeNull();
  });

  it('a ray that grazes an arc touches it once', () => {
    expect(firstHit(indexed(circle(2)), { x: -5, y: 2 }, { x: 1, y: 0 })?.x).toBeCloseTo(0, 6);
    expect(firstHit(indexed(circle(2)), { x: -5, y: 2.001 }, { x: 1, y: 0 })).toBeNull();
  });

  it('a long way through a small world', () => {
    const far = indexed(polygon([5000, -1], [5002, -1], [5002, 1], [5000, 1]), square(1));
    expect(firstHit(far, { x: 2, y: 0.5 }, { x: 1, y: 0 })).toMatchObject({ x: 5000, distance: 4998 });
  });

  for (const family of Object.keys(families)) {
    it(`${family}: lies on the contour, and the ray is on one side of it until there`, () => {
      for (let seed = 1; seed <= 12; seed++) {
        const random = seeded(seed * 15_485_863);
        const contour = randomContour(family, random);
        const index = indexed(contour);
        for (const point of testPoints(contour, random)) {
          const angle = 2 * Math.PI * random();
          const way = { x: Math.cos(angle), y: Math.sin(angle) };
          const hit = firstHit(index, point, way);
          // A start on the contour is on neither side of it.
          if (bruteDistance([contour], point.x, point.y) < 1e-9) continue;
          const isIn = signedDistance(index, point) > 0;
          if (isIn) expect(hit).not.toBeNull();
          const length = hit?.distance ?? 30;
          if (hit) {
            expect(bruteDistance([contour], hit.x, hit.y)).toBeLessThan(1e-9);
            const off = (hit.x - point.x) * way.y - (hit.y - point.y) * way.x;
            expect(Math.abs(off)).toBeLessThan(1e-9);
          }
          for (let k = 1; k < 40; k++) {
            const [x, y] = [point.x + (way.x * length * k) / 40, point.y + (way.y * length * k) / 40];
            if (bruteDistance([contour], x, y) > 1e-9) expect(isInside([contour], x, y)).toBe(isIn);
          }
        }
      }
    });
  }

  // Independent route: jsts 2.12, where the ray as a line cuts the ring as chords.
  it('jsts finds the same first point within the chord error', () => {
    for (const family of Object.keys(families)) {
      for (let seed = 1; seed <= 3; seed++) {
        const random = seeded(seed * 32_452_843);
        const contour = randomContour(family, random);
        const index = indexed(contour);
        const path = flattened(contour, chord);
        const ring = lineString(
          [...path, ...path.slice(0, 1)].map(({ X, Y }) => [X / clipperScale, Y / clipperScale]),
        );
        for (const point of testPoints(contour, random).slice(0, 6)) {
          const angle = 2 * Math.PI * random();
          const way = { x: Math.cos(angle), y: Math.sin(angle) };
          const ray = lineString([
            [point.x, point.y],
            [point.x + 40 * way.x, point.y + 40 * way.y],
          ]);
          const cut = OverlayOp.intersection(ray, ring) as { getCoordinates(): Point[] };
          const theirs = Math.min(
            ...cut.getCoordinates().map(({ x, y }) => Math.hypot(x - point.x, y - point.y)),
          );
          const hit = firstHit(index, point, way);
          // Where a ray cuts at a flat angle or passes a corner by a hair, a chord error tells hit from miss.
          if (hit && Math.abs(hit.distance - theirs) > 100 * chord) {
            const near = Math.min(hit.distance, theirs);
            expect(grazing(contour, point, way, near)).toBe(true);
          } else if (!hit && theirs < Infinity) expect(grazing(contour, point, way, theirs)).toBe(true);
        }
      }
    }
  });
});

/** Chord error of the polygons that the libraries are given, mm. */
const chord = 1e-5;

const factory = new GeometryFactory();
const lineString = (points: readonly (readonly number[])[]): unknown =>
  factory.createLineString(points.map(([x, y]) => new Coordinate(x, y)));

/** Whether a ray at a length runs nearly along the contour: a little to its side it still lies as near. */
function grazing(contour: Contour, from: Point, way: Point, length: number): boolean {
  const step = 1e-3;
  return [-step, step].every(
    (by) =>
      bruteDistance([contour], from.x + (length + by) * way.x, from.y + (length + by) * way.y) < step / 3,
  );
}

/** Points all about a contour, some of them on it and some a hair beside it. */
function testPoints(contour: Contour, random: () => number): Point[] {
  const about = Array.from({ length: 12 }, () => ({ x: random() * 14 - 7, y: random() * 14 - 7 }));
  const on = pointsAlong(contour, 3).filter(() => random() < 4 / contour.length);
  const beside = on.map(({ x, y }) => ({ x: x + 1e-4 * (random() - 0.5), y: y + 1e-4 * (random() - 0.5) }));
  return [...about, ...on.slice(0, 4), ...beside.slice(0, 4)];
}
