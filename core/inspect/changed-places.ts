import type { Box, Region } from '../geometry/contour';
import { boxAround, contourArea, contourBox } from '../geometry/contour-measures';
import { combineRegions } from '../geometry/combine-regions';
import { distanceProfile } from '../geometry/distance-profile';
import { indexOf, type SegmentIndex } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import { windingNumber } from '../geometry/winding';

/** A place where one outline differs from another. */
export interface ChangedPlace {
  /** Whether the newer outline has more area here or less. */
  readonly change: 'added' | 'removed';
  readonly box: Box;
  /** How far the newer boundary lies from the older one at the most, mm. */
  readonly size: number;
  /** mm². */
  readonly area: number;
  readonly region: Region;
}

/**
 * Where a newer outline differs from an older one by more than `least` (mm), largest first: what it has more, and what
 * it has less, each connected area by itself, by exact differences of both regions. The size is the largest distance
 * between the two boundaries there, or the area's own extent where that is less.
 */
export function changedPlaces(older: Region, newer: Region, least: number): readonly ChangedPlace[] {
  const [before, after] = [indexOf(tableOfRegion(older)), indexOf(tableOfRegion(newer))];
  const place =
    (change: ChangedPlace['change']) =>
    (region: Region): ChangedPlace => ({
      change,
      region,
      box: region.map(contourBox).reduce(boxAround, contourBox([])),
      size: sizeOf(region, before, after),
      area: region.reduce((sum, loop) => sum + contourArea(loop), 0),
    });
  return [
    ...connectedAreas(combineRegions(newer, older, 'difference')).map(place('added')),
    ...connectedAreas(combineRegions(older, newer, 'difference')).map(place('removed')),
  ]
    .filter(({ size }) => size > least)
    .sort((a, b) => b.size - a.size);
}

/** Every outer loop with the holes in it. */
function connectedAreas(region: Region): readonly Region[] {
  const outer = region.filter((loop) => contourArea(loop) > 0);
  const holes = region.filter((loop) => contourArea(loop) < 0);
  const holder = (hole: Region[number]) => {
    const [start] = hole;
    const around = outer.filter((loop) => start && windingNumber(loop, start.x, start.y) > 0);
    return around.reduce<Region[number] | null>(
      (least, loop) => (!least || contourArea(loop) < contourArea(least) ? loop : least),
      null,
    );
  };
  return outer.map((loop) => [loop, ...holes.filter((hole) => holder(hole) === loop)]);
}

/**
 * Each part of the area's boundary lies on one of the two outlines: its distance from the other one counts. A new hole
 * far from every edge is as large as it is, not as far away.
 */
function sizeOf(area: Region, before: SegmentIndex, after: SegmentIndex): number {
  const box = area.map(contourBox).reduce(boxAround, contourBox([]));
  const extent = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (before.table.count === 0 || after.table.count === 0) return extent;
  const table = tableOfRegion(area);
  const farthest = [before, after]
    .flatMap((other) => distanceProfile(table, other))
    .reduce((most, { atFrom, atTo }) => Math.max(most, Math.abs(atFrom), Math.abs(atTo)), 0);
  return Math.min(extent, farthest);
}
