import Flatbush from 'flatbush';
import type { Point } from '../geometry/contour';
import type { OpenRun } from './chain-strands';
import { groupBy } from './group-by';

/** Where a part of the drawing does not close. */
export interface OpenPlace {
  /** The open end nearest to another open end. */
  readonly at: Point;
  readonly layer: string;
  readonly pieces: number;
  /** Open runs this place speaks for: more than one where a layer has so many that one by one they would bury the rest. */
  readonly runs: number;
  /** To the nearest other open end, mm; null where there is none. */
  readonly gap: number | null;
  readonly isBranch: boolean;
}

/** The places to show for open runs: one each, or one for a whole layer that has more than a dozen. */
export function openPlaces(runs: readonly OpenRun[]): readonly OpenPlace[] {
  const nearest = nearestEnds(runs);
  const places = runs.map((run): OpenPlace => {
    const [first] = run.strands;
    const start = first?.chain[0] ?? { x: 0, y: 0 };
    let at: Point = run.freeEnds[0] ?? { x: start.x, y: start.y };
    let gap: number | null = null;
    for (const end of run.freeEnds) {
      const apart = nearest(end);
      if (apart === null || (gap !== null && apart >= gap)) continue;
      gap = apart;
      at = end;
    }
    const { layer = '0' } = first ?? {};
    return { at, layer, pieces: run.strands.length, runs: 1, gap, isBranch: run.isBranch };
  });
  const byLayer = groupBy(places, ({ layer }) => layer);
  return [...byLayer.values()].flatMap((all) => (all.length > mostShown ? [summedUp(all)] : all));
}

/** Distance from an open end to the nearest other one; null where there is no other. */
function nearestEnds(runs: readonly OpenRun[]): (end: Point) => number | null {
  const ends = runs.flatMap(({ freeEnds }) => freeEnds);
  if (ends.length < 2) return () => null;
  const index = new Flatbush(ends.length);
  for (const { x, y } of ends) index.add(x, y, x, y);
  index.finish();
  return (end) => {
    const [other] = index.neighbors(end.x, end.y, 1, Infinity, (i) => ends[i] !== end);
    const found = other === undefined ? undefined : ends[other];
    return found ? Math.hypot(found.x - end.x, found.y - end.y) : null;
  };
}

const mostShown = 12;

function summedUp(places: readonly OpenPlace[]): OpenPlace {
  const nearest = places.reduce((best, place) =>
    (place.gap ?? Infinity) < (best.gap ?? Infinity) ? place : best,
  );
  return {
    ...nearest,
    pieces: places.reduce((sum, { pieces }) => sum + pieces, 0),
    runs: places.length,
    isBranch: places.every(({ isBranch }) => isBranch),
  };
}
