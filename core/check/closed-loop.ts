import type { Contour, Point, Vertex } from '../geometry/contour';
import { lengthOf, pointOn, type PlainMove } from './beside-move';
import { LoopRuler } from './loop-ruler';
import type { ProgramFault } from './program-fault';
import type { WireMove } from './wire-path';

/** A loop made of what the program really does, or why there is none. */
export type ClosedLoop =
  { readonly loop: Contour; readonly fault: null } | { readonly loop: null; readonly fault: ProgramFault };

/**
 * The closed loop that the program's moves make along a pass's loop, as the text has it: the moves that run along the
 * wanted loop (their ends and middle no farther off it than `off`), put one after the other round it, with what is cut
 * twice taken once. Leads and other passes run elsewhere and are passed over. A stretch that no move cuts is a fault.
 *
 * The wanted loop only tells which moves belong together; where the wire goes, the moves alone say.
 */
export function closedLoop(moves: readonly WireMove[], wanted: Contour, off: number): ClosedLoop {
  const ruler = new LoopRuler(wanted);
  const stretches = stretchesAlong(moves, ruler, off);
  return aroundLoop(stretches, ruler, 2 * off);
}

/** A move along the loop from `start` to `end`, mm along it, in the loop's direction. */
interface Stretch {
  readonly move: PlainMove;
  readonly start: number;
  readonly end: number;
}

function stretchesAlong(moves: readonly WireMove[], ruler: LoopRuler, off: number): Stretch[] {
  const stretches: Stretch[] = [];
  /** Where on the loop the wire is, mm along it; null beside it. */
  let at: number | null = null;
  for (const move of moves) {
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
    stretches.push(way > 0 ? { move, start: at, end } : { move: reversed(move), start: end, end: at });
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

function aroundLoop(stretches: readonly Stretch[], ruler: LoopRuler, slack: number): ClosedLoop {
  const placed = stretches
    .filter(({ start, end }) => end > start)
    .map((stretch) => onFirstRound(stretch, ruler.length))
    .sort((a, b) => a.start - b.start);
  const [first] = placed;
  const vertices: Vertex[] = [];
  if (!first) return { loop: null, fault: notCut(null, ruler.pointAt(0)) };
  const rounds = [...placed, ...placed.map((stretch) => shifted(stretch, ruler.length))];
  let reached = first.start;
  let next = 0;
  while (reached < first.start + ruler.length - slack) {
    let best: Stretch | null = null;
    for (; next < rounds.length && (rounds[next] as Stretch).start <= reached + slack; next++) {
      const stretch = rounds[next] as Stretch;
      if (stretch.end > reached && (!best || stretch.end > best.end)) best = stretch;
    }
    if (!best) return { loop: null, fault: notCut(null, ruler.pointAt(reached)) };
    vertices.push(...partOf(best, reached, Math.min(best.end, first.start + ruler.length)));
    reached = best.end;
  }
  return { loop: vertices, fault: null };
}

const onFirstRound = (stretch: Stretch, length: number): Stretch =>
  shifted(stretch, -Math.floor(stretch.start / length) * length);

const shifted = ({ move, start, end }: Stretch, by: number): Stretch => ({
  move,
  start: start + by,
  end: end + by,
});

/** A stretch from one place along the loop to another as vertices, its end left to what follows. */
function partOf({ move, start, end }: Stretch, from: number, to: number): Vertex[] {
  const length = lengthOf(move);
  const perMm = length / (end - start);
  const [begin, stop] = [Math.max(0, from - start) * perMm, Math.min(end - start, to - start) * perMm];
  const turn = move.turn * ((stop - begin) / length);
  // An arc of more than a half turn is two segments.
  const parts = Math.abs(turn) > Math.PI ? 2 : 1;
  return Array.from({ length: parts }, (_, part) => ({
    ...pointOn(move, begin + ((stop - begin) * part) / parts),
    bulge: move.centre ? Math.tan(turn / parts / 4) : 0,
  }));
}

const reversed = ({ from, to, centre, turn }: PlainMove): PlainMove => ({
  from: to,
  to: from,
  centre,
  turn: -turn,
});

const notCut = (line: number | null, at: Point): ProgramFault => ({
  line,
  say: 'The program leaves a stretch of the contour uncut',
  at,
});
