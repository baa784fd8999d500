import type { Contour, Point, Vertex } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import { lengthOf, pointOn } from './beside-move';
import { LoopRuler } from './loop-ruler';
import { onFirstRound, shifted, stretchesAlong, type Stretch } from './loop-stretches';
import type { ProgramFault } from './program-fault';
import type { WireMove } from './wire-path';
import * as portable from '../geometry/portable-math';

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

function aroundLoop(stretches: readonly Stretch[], ruler: LoopRuler, slack: number): ClosedLoop {
  const placed = stretches
    .filter(({ start, end }) => end > start)
    .map((stretch) => onFirstRound(stretch, ruler.length))
    .sort((a, b) => a.start - b.start);
  const [first] = placed;
  const vertices: Vertex[] = [];
  if (!first) return { loop: null, fault: notCut(null, ruler.pointAt(0)) };
  const rounds = [...placed, ...placed.map((stretch) => shifted(stretch, ruler.length))];
  const end = first.start + ruler.length;
  let reached = first.start;
  let next = 0;
  let near: Stretch[] = [];
  while (reached < end - tolerance.samePoint) {
    const from = reached;
    while (next < rounds.length && (rounds[next] as Stretch).start <= from + slack) {
      near.push(rounds[next++] as Stretch);
    }
    near = near.filter((stretch) => stretch.end > from + tolerance.samePoint);
    const best = goingOn(near, from);
    if (!best) return { loop: null, fault: notCut(null, ruler.pointAt(from)) };
    if (best.start >= end) break;
    vertices.push(...partOf(best, from, Math.min(best.end, end)));
    reached = best.end;
  }
  return { loop: vertices, fault: null };
}

/** Of what begins there or before it the stretch that goes farthest; where there is none, the next one to begin. */
function goingOn(stretches: readonly Stretch[], from: number): Stretch | null {
  const begun = stretches.filter(({ start }) => start <= from + tolerance.samePoint);
  if (begun.length > 0) return begun.reduce((best, one) => (one.end > best.end ? one : best));
  return stretches.reduce<Stretch | null>(
    (best, one) => (best && best.start <= one.start ? best : one),
    null,
  );
}

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
    bulge: move.centre ? portable.tan(turn / parts / 4) : 0,
  }));
}

const notCut = (line: number | null, at: Point): ProgramFault => ({
  line,
  say: 'The program leaves a stretch of the contour uncut',
  at,
});
