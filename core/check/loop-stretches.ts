import type { Point } from '../geometry/contour';
import { lengthOf, pointOn, type PlainMove } from './beside-move';
import type { LoopRuler } from './loop-ruler';
import type { WireMove } from './wire-path';

/** A move along the loop from `start` to `end`, mm along it, in the loop's direction. */
export interface Stretch {
  /** Of the move among all. */
  readonly index: number;
  readonly move: PlainMove;
  readonly start: number;
  readonly end: number;
}

/** The moves that run along a loop, their ends and middle no farther off it than `off`, in their own order. */
export function stretchesAlong(moves: readonly WireMove[], ruler: LoopRuler, off: number): Stretch[] {
  const stretches: Stretch[] = [];
  /** Where on the loop the wire is, mm along it; null beside it. */
  let at: number | null = null;
  for (const [index, move] of moves.entries()) {
    const length = lengthOf(move);
    if (at === null) {
      at = ruler.nearestWithin(move.from, off)?.along ?? null;
    }
    if (at === null || length === 0) continue;
    const way = likelierWay(move, at);
    if (move.isRapid || !runsAlong(move, at, way)) {
      at = null;
      continue;
    }
    const end = snapped(move.to, at + way * length);
    stretches.push(
      way > 0 ? { index, move, start: at, end } : { index, move: reversed(move), start: end, end: at },
    );
    at = end;
  }
  return stretches;

  /** Forwards or backwards along the loop, by its middle and its end: half a circle ends at the same place both ways. */
  function likelierWay(move: WireMove, start: number): 1 | -1 {
    const miss = (way: 1 | -1, along: number) => {
      const wanted = ruler.pointAt(start + way * along);
      const real = pointOn(move, along);
      return Math.hypot(wanted.x - real.x, wanted.y - real.y);
    };
    const length = lengthOf(move);
    const misses = (way: 1 | -1) => miss(way, length / 2) + miss(way, length);
    return misses(1) <= misses(-1) ? 1 : -1;
  }

  /** By its middle and its end; both lengths may differ a little, where one has a corner and the other a small arc. */
  function runsAlong(move: WireMove, start: number, way: 1 | -1): boolean {
    return [0.5, 1].every((share) => {
      const along = share * lengthOf(move);
      return ruler.nearestAround(pointOn(move, along), start + way * along, 4 * off).off <= off;
    });
  }

  /** Rounding must not add up along the loop. */
  function snapped(point: Point, about: number): number {
    const place = ruler.nearestAround(point, about, 4 * off);
    const turns = Math.round((about - place.along) / ruler.length);
    return place.along + turns * ruler.length;
  }
}

/** The same, starting on the loop's first round. */
export const onFirstRound = (stretch: Stretch, length: number): Stretch =>
  shifted(stretch, -Math.floor(stretch.start / length) * length);

export const shifted = (stretch: Stretch, by: number): Stretch => ({
  ...stretch,
  start: stretch.start + by,
  end: stretch.end + by,
});

const reversed = ({ from, to, centre, turn }: PlainMove): PlainMove => ({
  from: to,
  to: from,
  centre,
  turn: -turn,
});
