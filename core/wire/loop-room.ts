import type { Contour, Point } from '../geometry/contour';
import { contourArea } from '../geometry/contour-measures';
import { directionOf, pointAt, type LoopPosition } from '../geometry/loop-position';
import { indexOf, isNearer, nearestSegment, type SegmentIndex } from '../geometry/segment-index';
import { addSegment, emptyTable, tableOfRegion } from '../geometry/segment-table';
import { tablesCross } from '../geometry/tables-cross';
import { windingAt } from '../geometry/winding';
import type { Site } from '../plan';
import { isLineFree, siteIndex, type SiteIndex } from './site';

/** A wire loop with its waste and its surroundings, ready to be asked where there is room. */
export interface LoopRoom {
  readonly loop: Contour;
  readonly waste: 'inside' | 'outside';
  readonly index: SegmentIndex;
  readonly site: SiteIndex;
  /** +1 where the waste lies left of travel. */
  readonly wasteSign: 1 | -1;
  /** Half the width of what the wire cuts, mm. */
  readonly halfKerf: number;
}

export function loopRoom(loop: Contour, waste: 'inside' | 'outside', site: Site, halfKerf: number): LoopRoom {
  const insideIsLeft = contourArea(loop) > 0;
  return {
    loop,
    waste,
    index: indexOf(tableOfRegion([loop])),
    site: siteIndex(site),
    wasteSign: insideIsLeft === (waste === 'inside') ? 1 : -1,
    halfKerf,
  };
}

/** The point so far off a place of the loop, square to it, on the side of the waste. */
export function besidePlace({ loop, wasteSign }: LoopRoom, place: LoopPosition, distance: number): Point {
  const at = pointAt(loop, place);
  const direction = directionOf(loop, place);
  return { x: at.x - direction.y * wasteSign * distance, y: at.y + direction.x * wasteSign * distance };
}

export const isInWaste = ({ index, waste }: LoopRoom, { x, y }: Point): boolean =>
  (windingAt(index, x, y) !== 0) === (waste === 'inside');

/** From a point to the loop, mm. */
export const distanceToPath = ({ index }: LoopRoom, { x, y }: Point): number =>
  nearestSegment(index, x, y).distance;

/** In the waste and nowhere nearer to the path than the least distance. */
export const isFree = (room: LoopRoom, point: Point, least: number): boolean =>
  // A hair less, so that a lead exactly as long as needed is long enough.
  isInWaste(room, point) && !isNearer(room.index, point.x, point.y, least * (1 - hair));

/** Whether the straight way between two points meets neither the loop, but for the end, nor anything around it. */
export function isWayFree(room: LoopRoom, from: Point, to: Point): boolean {
  const line = emptyTable(1);
  // Stop short of the end, which may touch the loop.
  const short = 1 / 1000;
  const end = { x: to.x + (from.x - to.x) * short, y: to.y + (from.y - to.y) * short };
  addSegment(line, from.x, from.y, end.x, end.y, 0);
  return !tablesCross(line, room.index) && isLineFree(room.site, from, to, room.halfKerf);
}

const hair = 1 / 1_000_000;
