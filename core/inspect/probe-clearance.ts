import type { Point, Region, Vertex } from '../geometry/contour';
import { contourLength, segmentLength } from '../geometry/contour-measures';
import { nearestPosition } from '../geometry/loop-position';
import type { ClearanceMap } from './clearance-map';
import { clearancePlace, type ClearancePlace } from './clearance-place';
import { tableOfRegion, type SegmentTable } from '../geometry/segment-table';

/** The place of the punch nearest to a point, as a station of its map; null for an empty punch. O(n). */
export function stationNear(punch: Region, point: Point): number | null {
  let best: { station: number; distance: number } | null = null;
  let before = 0;
  for (const contour of punch) {
    const { segment, along, distance } = nearestPosition(contour, point);
    if (!best || distance < best.distance) {
      best = { station: before + lengthTo(contour, segment, along), distance };
    }
    before += contourLength(contour);
  }
  return best && best.station;
}

/** The clearance at a station (taken round and round), with the nearest point of the die. */
export function clearanceAtStation(
  map: ClearanceMap,
  punch: Region | SegmentTable,
  station: number,
): ClearancePlace {
  const table = isTable(punch) ? punch : tableOfRegion(punch);
  const at = ((station % map.perimeter) + map.perimeter) % map.perimeter;
  let low = 0;
  let high = map.pieces.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((map.pieces[middle]?.station ?? 0) <= at) low = middle;
    else high = middle - 1;
  }
  const piece = map.pieces[low] as ClearanceMap['pieces'][number];
  const share = piece.length === 0 ? 0 : Math.min(1, (at - piece.station) / piece.length);
  return clearancePlace(table, piece, piece.from + share * (piece.to - piece.from));
}

const isTable = (punch: Region | SegmentTable): punch is SegmentTable => 'count' in punch;

function lengthTo(contour: readonly Vertex[], segment: number, along: number): number {
  let length = 0;
  for (let k = 0; k < segment; k++)
    length += segmentLength(contour[k] as Vertex, contour[(k + 1) % contour.length] as Vertex);
  const own = segmentLength(contour[segment] as Vertex, contour[(segment + 1) % contour.length] as Vertex);
  return length + along * own;
}
