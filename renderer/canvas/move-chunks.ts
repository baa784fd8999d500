import { boxOfMove, lengthOf, pointOn } from '../../core/check/beside-move';
import type { WireMove } from '../../core/check/wire-path';
import { boxAround } from '../../core/geometry/contour-measures';
import type { Point } from '../../core/geometry/contour';
import type { Timeline } from '../replay/timeline';
import type { PathChunk } from './path-chunk';

/** Feeds of one chunk: as many as are stroked at once. */
export const movesInChunk = 256;

/** All feeds of a program as ready paths, `movesInChunk` moves each; null where a chunk has only rapid moves. */
export function moveChunks(timeline: Timeline): readonly (PathChunk | null)[] {
  const chunks: (PathChunk | null)[] = [];
  for (let first = 0; first < timeline.moves.length; first += movesInChunk) {
    chunks.push(moveChunk(timeline, first, first + movesInChunk));
  }
  return chunks;
}

/** The feeds from one move up to another as one path; of the last one only a share, and of the first what is after a share. */
export function moveChunk(
  { moves }: Timeline,
  first: number,
  end: number,
  shareOfLast = 1,
  afterShare = 0,
): PathChunk | null {
  const path = new Path2D();
  let box: PathChunk['box'] | null = null;
  let origin: Point = { x: 0, y: 0 };
  let at: Point | null = null;
  const last = Math.min(end, moves.length) - 1;
  for (let i = first; i <= last; i++) {
    const move = moves[i] as WireMove;
    if (move.isRapid) {
      at = null;
      continue;
    }
    if (!box) origin = move.from;
    const [from, to] = [i === first ? afterShare : 0, i === last ? shareOfLast : 1];
    const start = from === 0 ? move.from : pointOn(move, from * lengthOf(move));
    if (!at || at !== move.from) path.moveTo(start.x - origin.x, start.y - origin.y);
    addMove(path, move, from, to, origin);
    box = box ? boxAround(box, boxOfMove(move)) : boxOfMove(move);
    at = move.to;
  }
  return box && { box, origin, path };
}

function addMove(path: Path2D, move: WireMove, from: number, to: number, origin: Point): void {
  const { centre, turn } = move;
  if (!centre) {
    const end = to === 1 ? move.to : pointOn(move, to * lengthOf(move));
    path.lineTo(end.x - origin.x, end.y - origin.y);
    return;
  }
  const radius = Math.hypot(move.from.x - centre.x, move.from.y - centre.y);
  const start = Math.atan2(move.from.y - centre.y, move.from.x - centre.x);
  // On the flipped canvas "counterclockwise" (falling angles) is the clockwise arc.
  path.arc(
    centre.x - origin.x,
    centre.y - origin.y,
    radius,
    start + turn * from,
    start + turn * to,
    turn < 0,
  );
}
