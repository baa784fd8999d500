import type { Box, Point } from '../geometry/contour';
import { directionOf, pointAt } from '../geometry/loop-position';
import { isWayFree, type LoopRoom } from './loop-room';
import type { BeginPlace, PlacedStart, StartSearch } from './begin-place';

/** How far outside the block the wire stands clear before it cuts in, mm (common practice). */
const clearOfBlock = 2;

/**
 * A start from outside the block, straight to the place that is nearest to an edge. Only for a member that is cut from
 * around: the frame of a die must not be cut through.
 */
export function edgeStart(room: LoopRoom, places: readonly BeginPlace[]): StartSearch {
  const at = places[0] ? pointAt(room.loop, places[0].position) : { x: 0, y: 0 };
  const trouble = (because: string) => ({ placed: null, trouble: { kind: 'edge' as const, at, because } });
  if (room.waste === 'inside') return trouble('an opening, whose frame would be cut through');
  const ways = places
    .flatMap((each, place) => {
      const from = outsidePoint(room, each);
      return from ? [{ each, place, from: from.at, length: from.length }] : [];
    })
    .sort((a, b) => a.length - b.length || a.place - b.place);
  for (const { each, place, from } of ways) {
    const begin = each.begin();
    if (!begin || !isWayFree(room, from, begin.wait)) continue;
    const placed: PlacedStart = { place, hole: { ...from, diameter: 0, kind: 'edge' }, begin };
    return { placed, trouble: null };
  }
  return trouble('without a free way from the edge of the block to its contour');
}

/** Where the straight line off a place into the waste has left the block; null where the block has no edge. */
function outsidePoint(room: LoopRoom, { position }: BeginPlace): { at: Point; length: number } | null {
  const at = pointAt(room.loop, position);
  const along = directionOf(room.loop, position);
  const off = { x: -along.y * room.wasteSign, y: along.x * room.wasteSign };
  const length = wayOut(room.site.site.block, at, off) + clearOfBlock;
  return Number.isFinite(length)
    ? { at: { x: at.x + off.x * length, y: at.y + off.y * length }, length }
    : null;
}

function wayOut(box: Box, at: Point, off: Point): number {
  const out = (from: number, step: number, low: number, high: number): number =>
    step > 0 ? (high - from) / step : step < 0 ? (low - from) / step : Infinity;
  return Math.max(0, Math.min(out(at.x, off.x, box.minX, box.maxX), out(at.y, off.y, box.minY, box.maxY)));
}
