import Flatbush from 'flatbush';
import { boxOfMove, lengthOf, turnBetween } from '../../core/check/beside-move';
import type { WireMove } from '../../core/check/wire-path';
import type { Point } from '../../core/geometry/contour';
import type { Timeline } from './timeline';

export interface PathHit {
  /** Index of the move. */
  readonly move: number;
  readonly line: number;
  /** When the wire is there, seconds. */
  readonly time: number;
}

/** The place of a program's feeds nearest to a point, within a distance: the latest, where passes lie on one another. */
export function pathHit(timeline: Timeline, point: Point, within: number): PathHit | null {
  const tree = treeOf(timeline);
  let best: { move: number; share: number; distance: number } | null = null;
  tree?.search(point.x - within, point.y - within, point.x + within, point.y + within, (i) => {
    const nearest = nearestOn(timeline.moves[i] as WireMove, point);
    const isNearer =
      !best || nearest.distance < best.distance || (nearest.distance === best.distance && i > best.move);
    if (nearest.distance <= within && isNearer) best = { move: i, ...nearest };
    return false;
  });
  if (!best) return null;
  const { move, share } = best as { move: number; share: number };
  const [start, end] = [timeline.starts[move] ?? 0, timeline.starts[move + 1] ?? 0];
  return { move, line: (timeline.moves[move] as WireMove).line, time: start + (end - start) * share };
}

const trees = new WeakMap<Timeline, Flatbush>();

function treeOf(timeline: Timeline): Flatbush | null {
  const known = trees.get(timeline);
  if (known || timeline.moves.length === 0) return known ?? null;
  const tree = new Flatbush(timeline.moves.length);
  for (const move of timeline.moves) {
    // The way to a start hole is none that is cut.
    const { minX, minY, maxX, maxY } = move.isRapid ? nowhere : boxOfMove(move);
    tree.add(minX, minY, maxX, maxY);
  }
  tree.finish();
  trees.set(timeline, tree);
  return tree;
}

const nowhere = { minX: Infinity, minY: Infinity, maxX: Infinity, maxY: Infinity };

/** How far a point is from a move, and how much of the move is done where it is nearest. */
function nearestOn(move: WireMove, point: Point): { share: number; distance: number } {
  const { from, to, centre, turn } = move;
  if (!centre) {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const square = dx * dx + dy * dy;
    const along = square === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / square;
    const share = Math.min(1, Math.max(0, along));
    return { share, distance: Math.hypot(from.x + dx * share - point.x, from.y + dy * share - point.y) };
  }
  const angle = turnBetween(
    { x: from.x - centre.x, y: from.y - centre.y },
    { x: point.x - centre.x, y: point.y - centre.y },
  );
  const full = 2 * Math.PI;
  const ahead = (angle * Math.sign(turn) + full) % full;
  if (ahead <= Math.abs(turn)) {
    const radius = lengthOf(move) / Math.abs(turn);
    const distance = Math.abs(Math.hypot(point.x - centre.x, point.y - centre.y) - radius);
    return { share: ahead / Math.abs(turn), distance };
  }
  const [start, end] = [from, to].map((e) => Math.hypot(e.x - point.x, e.y - point.y)) as [number, number];
  return start <= end ? { share: 0, distance: start } : { share: 1, distance: end };
}
