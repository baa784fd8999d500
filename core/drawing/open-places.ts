import type { Point } from '../geometry/contour';
import type { OpenRun } from './chain-strands';

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
  const freeEnds = runs.flatMap(({ freeEnds: ends }) => ends);
  const places = runs.map((run): OpenPlace => {
    const [first] = run.strands;
    const start = first?.chain[0] ?? { x: 0, y: 0 };
    let at: Point = run.freeEnds[0] ?? { x: start.x, y: start.y };
    let gap: number | null = null;
    for (const end of run.freeEnds) {
      for (const other of freeEnds) {
        if (other === end) continue;
        const apart = Math.hypot(other.x - end.x, other.y - end.y);
        if (gap !== null && apart >= gap) continue;
        gap = apart;
        at = end;
      }
    }
    const { layer = '0' } = first ?? {};
    return { at, layer, pieces: run.strands.length, runs: 1, gap, isBranch: run.isBranch };
  });
  const byLayer = new Map<string, OpenPlace[]>();
  for (const place of places) byLayer.set(place.layer, [...(byLayer.get(place.layer) ?? []), place]);
  return [...byLayer.values()].flatMap((all) => (all.length > mostShown ? [summedUp(all)] : all));
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
