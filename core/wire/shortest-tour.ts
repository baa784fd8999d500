import type { Point } from '../geometry/contour';

/** A stop of the tour; it comes after those that it names (by index). */
export interface TourStop extends Point {
  readonly after: readonly number[];
}

/**
 * The order in which to visit stops so that the way is short: nearest neighbour from the one nearest to the lower left
 * corner, then 2-opt (a piece of the way run the other way round) until no such change shortens it. Never longer than
 * nearest neighbour alone; a stop never comes before one that it has to follow. The same stops always give the same
 * order. O(n²) a round.
 */
export function shortestTour(stops: readonly TourStop[]): readonly number[] {
  return twoOpt(stops, nearestNeighbourTour(stops));
}

/** Always on to the nearest stop that may come next; the first is the one nearest to the lower left corner. */
export function nearestNeighbourTour(stops: readonly TourStop[]): readonly number[] {
  const left = new Set(stops.keys());
  const tour: number[] = [];
  let at: Point = {
    x: Math.min(...stops.map(({ x }) => x)),
    y: Math.min(...stops.map(({ y }) => y)),
  };
  while (left.size > 0) {
    let next = -1;
    let least = Infinity;
    for (const i of left) {
      const stop = stops[i] as TourStop;
      const distance = apart(at, stop);
      if (distance >= least || stop.after.some((before) => left.has(before))) continue;
      least = distance;
      next = i;
    }
    // Stops that wait for one another in a ring: the first of them, so that none is lost.
    if (next < 0) next = Math.min(...left);
    left.delete(next);
    tour.push(next);
    at = stops[next] as TourStop;
  }
  return tour;
}

/** Length of the way from the first stop to the last, mm. */
export function tourLength(stops: readonly Point[], tour: readonly number[]): number {
  let length = 0;
  for (let k = 1; k < tour.length; k++) {
    length += apart(stops[tour[k - 1] as number] as Point, stops[tour[k] as number] as Point);
  }
  return length;
}

function twoOpt(stops: readonly TourStop[], start: readonly number[]): readonly number[] {
  const tour = [...start];
  const stop = (k: number): TourStop => stops[tour[k] as number] as TourStop;
  const step = (a: number, b: number): number => (a < 0 || b >= tour.length ? 0 : apart(stop(a), stop(b)));
  const rounds = mostRounds(tour.length);
  for (let round = 0, shortened = true; shortened && round < rounds; round++) {
    shortened = false;
    for (let i = 0; i + 1 < tour.length; i++) {
      for (let j = i + 1; j < tour.length; j++) {
        // The way is open: its first stop may change too, its beginning has no length.
        const gain = step(i - 1, i) + step(j, j + 1) - (i === 0 ? 0 : apart(stop(i - 1), stop(j)));
        const cost = j + 1 < tour.length ? apart(stop(i), stop(j + 1)) : 0;
        if (gain - cost <= leastGain || !mayReverse(stops, tour, i, j)) continue;
        reverse(tour, i, j);
        shortened = true;
      }
    }
  }
  return tour;
}

/** mm: a gain of rounding alone would go round for ever. */
const leastGain = 1 / 1_000_000;

/** Large plates are left a little longer than need be, rather than let someone wait. */
const mostRounds = (stops: number): number => (stops > 2000 ? 2 : stops > 500 ? 10 : 1000);

/** Whether no stop of the piece has to follow another one of it. */
function mayReverse(stops: readonly TourStop[], tour: readonly number[], i: number, j: number): boolean {
  const piece = tour.slice(i, j + 1);
  if (piece.every((k) => (stops[k] as TourStop).after.length === 0)) return true;
  const own = new Set(piece);
  return piece.every((k) => !(stops[k] as TourStop).after.some((before) => own.has(before)));
}

function reverse(tour: number[], i: number, j: number): void {
  for (let a = i, b = j; a < b; a++, b--) {
    [tour[a], tour[b]] = [tour[b] as number, tour[a] as number];
  }
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
