import { describe, expect, it } from 'vitest';
import { combineRegions } from '../../../core/geometry/combine-regions';
import type { Contour, Vertex } from '../../../core/geometry/contour';
import { crossingRoom, crossSegments } from '../../../core/geometry/cross-segments';
import { firstHit } from '../../../core/geometry/first-hit';
import { leastDistance } from '../../../core/geometry/least-distance';
import { nearestPoint, signedDistance } from '../../../core/geometry/nearest-point';
import { offsetRegion } from '../../../core/geometry/offset-region';
import { indexOf } from '../../../core/geometry/segment-index';
import { addSegment, emptyTable, squaredDistance, tableOfRegion } from '../../../core/geometry/segment-table';
import { pointsAlong, regionArea } from '../../support/contour-facts';
import { polygon, square, star } from '../../support/shapes';

/**
 * Arcs whose centre is kilometres away, as programs write them for what was once a line. The source of truth is plain
 * geometry: over a chord the arc with bulge b stands b · chord / 2 high.
 */
const bulges = [1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1.3e-9];

describe('arcs with their centre far away', () => {
  it('distance from the middle of the arc and from the ends', () => {
    for (const bulge of bulges) {
      for (const size of [0.5, 30, 1000]) {
        const table = emptyTable(1);
        addSegment(table, 0, 0, size, 0, bulge);
        const height = (bulge * size) / 2;
        expect(Math.sqrt(squaredDistance(table, 0, size / 2, 1))).toBeCloseTo(1 + height, 10);
        expect(Math.sqrt(squaredDistance(table, 0, size / 2, -1))).toBeCloseTo(1 - height, 10);
        expect(Math.sqrt(squaredDistance(table, 0, -3, 4))).toBeCloseTo(5, 12);
      }
    }
  });

  for (const size of [0.5, 30, 1000]) {
    it(`a star of them, ${size} mm: no loop lost, every point within 1e-9`, () => {
      for (const bulge of bulges) {
        for (const sense of [1, -1]) {
          for (const turn of [0, 0.1, 0.7]) {
            const source = bent(star(7, size, size * 0.6), bulge, sense, turn, size);
            for (const distance of [-0.015 * size, 0.015 * size]) {
              const offset = offsetRegion([source], distance);
              expect(offset).toHaveLength(1);
              expect(offset[0]).toHaveLength(21);
              for (const { x, y } of pointsNear(offset[0] as Contour)) {
                expect(Math.abs(distanceTo(source, x, y) - Math.abs(distance))).toBeLessThan(1e-9);
              }
            }
          }
        }
      }
    });
  }

  it('arcs that cross: a bent square and the same turned by 45 degrees', () => {
    const side = 10;
    const edge = side * (Math.SQRT2 - 1);
    for (const bulge of bulges) {
      const upright = square(side).map((v) => ({ x: v.x - side / 2, y: v.y - side / 2, bulge }));
      const turned = bent(upright, bulge, 1, Math.PI / 4, 0);
      // A regular octagon, and over each edge what the arc stands above its chord there, h·(1 − (x / half side)²).
      const height = (bulge * side) / 2;
      const caps = 8 * height * (edge - edge ** 3 / (3 * side * side));
      const expected = 2 * (Math.SQRT2 - 1) * side * side + caps;
      const common = combineRegions([upright], [turned], 'intersection');
      expect(common).toHaveLength(1);
      expect(common[0]).toHaveLength(8);
      expect(Math.abs(regionArea(common) - expected)).toBeLessThan(1e-11 + 1000 * bulge * bulge);
    }
  });

  it('arcs of one circle that follow each other or lie beside each other only touch', () => {
    for (const bulge of bulges) {
      const table = emptyTable(3);
      const half = Math.tan(Math.atan(bulge) / 2);
      const height = (bulge * 10) / 2;
      addSegment(table, 0, 0, 10, 0, bulge);
      addSegment(table, 5, -height, 10, 0, half);
      addSegment(table, 0, 0, 5, -height, half);
      const out = new Float64Array(crossingRoom);
      expect(crossSegments(table, 1, table, 2, out)).toBe(1);
      expect(crossSegments(table, 0, table, 1, out)).toBe(2);
    }
  });

  it('queries: nearest place, first hit along a ray, least distance', () => {
    for (const bulge of bulges) {
      const bottom = [
        { x: 0, y: 0, bulge },
        { x: 10, y: 0, bulge: 0 },
        { x: 10, y: 5, bulge: 0 },
        { x: 0, y: 5, bulge: 0 },
      ];
      const height = bulge * 5;
      const index = indexOf(tableOfRegion([bottom]));
      const hit = firstHit(index, { x: 5, y: -2 }, { x: 0, y: 1 });
      expect(hit?.distance).toBeCloseTo(2 - height, 10);
      expect(leastDistance(tableOfRegion([polygon([5, -3], [4, -4], [6, -4])]), index).distance).toBeCloseTo(
        3 - height,
        10,
      );
      expect(signedDistance(index, { x: 5, y: -1 })).toBeCloseTo(-(1 - height), 10);
      expect(signedDistance(index, { x: 5, y: 1 })).toBeCloseTo(1 + height, 10);
      expect(nearestPoint(index, { x: 5, y: -1 })?.y).toBeCloseTo(-height, 10);
    }
  });
});

function bent(contour: Contour, bulge: number, sense: number, turn: number, away: number): Contour {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return contour.map(({ x, y }, i) => ({
    x: x * cos - y * sin + away,
    y: x * sin + y * cos,
    bulge: (i % 2 === 0 ? sense : 1) * bulge,
  }));
}

/** Ends and middles by chord and height: the centre is never used. */
const pointsNear = (contour: Contour): { x: number; y: number }[] =>
  contour.flatMap((from, i) => {
    if (Math.abs(from.bulge) > 0.001)
      return pointsAlong([from, contour[(i + 1) % contour.length] as Vertex], 3).slice(0, 3);
    const to = contour[(i + 1) % contour.length] as Vertex;
    const half = from.bulge / 2;
    return [
      from,
      {
        x: (from.x + to.x) / 2 + half * (to.y - from.y),
        y: (from.y + to.y) / 2 - half * (to.x - from.x),
      },
    ];
  });

/** By brute force; an arc as the circle through both its ends with the power of the point (Euclid III.36). */
function distanceTo(contour: Contour, x: number, y: number): number {
  return Math.min(
    ...contour.map((a, i) => segmentDistance(a, contour[(i + 1) % contour.length] as Vertex, x, y)),
  );
}

function segmentDistance(a: Vertex, b: Vertex, x: number, y: number): number {
  const ends = Math.min(Math.hypot(x - a.x, y - a.y), Math.hypot(x - b.x, y - b.y));
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const chord = Math.hypot(dx, dy);
  const along = ((x - a.x) * dx + (y - a.y) * dy) / chord;
  const across = (dx * (y - a.y) - dy * (x - a.x)) / chord;
  const lift = ((1 - a.bulge ** 2) / (4 * a.bulge)) * chord;
  // The two ends as seen from the centre bound the arc.
  const isBeside =
    lift > 0
      ? along * lift >= 0 - (across * chord) / 2 && (chord - along) * lift >= 0 - (across * chord) / 2
      : along * -lift >= (across * chord) / 2 && (chord - along) * -lift >= (across * chord) / 2;
  if (!isBeside) return ends;
  const power = (x - a.x) * (x - b.x) + (y - a.y) * (y - b.y) - 2 * lift * across;
  const radius = Math.hypot(lift, chord / 2);
  const fromCentre = Math.hypot(along - chord / 2, across - lift);
  return Math.abs(power) / (fromCentre + radius);
}
