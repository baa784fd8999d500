import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  nearestNeighbourTour,
  shortestTour,
  tourLength,
  type TourStop,
} from '../../../core/wire/shortest-tour';

const stop = (x: number, y: number, after: readonly number[] = []): TourStop => ({ x, y, after });
const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const stops = fc.array(
  fc.record({ x: coordinate, y: coordinate, after: fc.constant<readonly number[]>([]) }),
  { maxLength: 40 },
);

/** Some of the later stops have to follow earlier ones. */
const boundStops = stops.chain((plain) =>
  fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 10 }).map((pairs) =>
    plain.map((one, i) => ({
      ...one,
      after: pairs.flatMap(([a, b]) => (a % (i + 1) < i && b % plain.length === i ? [a % (i + 1)] : [])),
    })),
  ),
);

describe('shortestTour', () => {
  it('uncrosses the way that nearest neighbour crosses', () => {
    // Common textbook case: from 0 the nearest is 1, and 3 is left for a long way back.
    const line = [stop(0, 0), stop(1, 0), stop(-1.5, 0), stop(4, 0)];
    expect(tourLength(line, shortestTour(line))).toBeCloseTo(5.5, 12);
  });

  it('visits every stop once, and is never longer than nearest neighbour alone', () => {
    fc.assert(
      fc.property(boundStops, (given) => {
        const tour = shortestTour(given);
        expect([...tour].sort((a, b) => a - b)).toEqual([...given.keys()]);
        expect(tourLength(given, tour)).toBeLessThanOrEqual(
          tourLength(given, nearestNeighbourTour(given)) + 1e-9,
        );
        for (const [place, i] of tour.entries()) {
          for (const before of given[i]?.after ?? []) expect(tour.indexOf(before)).toBeLessThan(place);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('finds the shortest way through up to 6 stops nearly always', () => {
    // By trying all orders. 2-opt may end in a way that no single turn shortens.
    let exact = 0;
    const sample = fc.sample(
      fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 4, maxLength: 6 }),
      {
        numRuns: 100,
        seed: 5,
      },
    );
    for (const points of sample) {
      const given = points.map(({ x, y }) => stop(x, y));
      const best = Math.min(...orders([...given.keys()]).map((order) => tourLength(given, order)));
      const found = tourLength(given, shortestTour(given));
      expect(found).toBeLessThan(1.3 * best + 1e-9);
      if (found < best + 1e-9) exact++;
    }
    expect(exact).toBeGreaterThan(80);
  });

  it('visits a grid of 400 holes without a detour', () => {
    const grid = Array.from({ length: 400 }, (_, i) => stop(10 * (i % 20), 10 * Math.floor(i / 20)));
    expect(tourLength(grid, shortestTour(grid))).toBeLessThan(1.1 * 3990);
  });

  it('is nothing for nothing', () => {
    expect(shortestTour([])).toEqual([]);
    expect(tourLength([], [])).toBe(0);
  });
});

function orders(of: readonly number[]): readonly (readonly number[])[] {
  if (of.length < 2) return [of];
  return of.flatMap((first) => orders(of.filter((other) => other !== first)).map((rest) => [first, ...rest]));
}
