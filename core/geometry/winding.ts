import type { Contour, Region } from './contour';
import { fewSegments, indexOf, type SegmentIndex } from './segment-index';
import { num, outsideCircle, tableOfRegion, type SegmentTable } from './segment-table';

/**
 * How often a contour runs round a point, counter-clockwise positive: 1 inside a counter-clockwise contour, 0 outside.
 * Points on the contour itself fall to either side. O(n).
 */
export function windingNumber(contour: Contour, x: number, y: number): number {
  const table = tableOfRegion([contour]);
  let winding = 0;
  for (let i = 0; i < table.count; i++) winding += windingOfSegment(table, i, x, y);
  return winding;
}

/** The same for all loops of an index together: only the segments that the ray to +x can meet are looked at. */
export function windingAt(index: SegmentIndex, x: number, y: number): number {
  const { table } = index;
  let winding = 0;
  if (table.count <= fewSegments) {
    for (let i = 0; i < table.count; i++) winding += windingOfSegment(table, i, x, y);
    return winding;
  }
  const { tree } = index;
  tree?.search(x, y, tree.maxX, y, (i) => {
    winding += windingOfSegment(table, i, x, y);
    return false;
  });
  return winding;
}

/** Whether a point lies inside a region (outer loops counter-clockwise, holes clockwise). */
export const isInside = (region: Region, x: number, y: number): boolean =>
  windingAt(indexOf(tableOfRegion(region)), x, y) > 0;

/**
 * A segment's share: its chord by crossings of the ray to +x (half-open in y, so that vertices count once), corrected
 * by one where the cap between chord and arc holds the point.
 */
function windingOfSegment(table: SegmentTable, i: number, x: number, y: number): number {
  const x0 = num(table.x0, i);
  const y0 = num(table.y0, i);
  const x1 = num(table.x1, i);
  const y1 = num(table.y1, i);
  const side = (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0);
  let winding = 0;
  if (y0 <= y ? y1 > y && side > 0 : y1 <= y && side < 0) winding = y1 > y0 ? 1 : -1;
  const bulge = num(table.bulge, i);
  if (bulge === 0 || (bulge > 0 ? side > 0 : side < 0)) return winding;
  if (side === 0 && !capHoldsChord(x0, y0, x1, y1, bulge)) return winding;
  // Inside the circle and on the arc's side of the chord: in the cap.
  return outsideCircle(table, i, x, y) < 0 ? winding + (bulge > 0 ? 1 : -1) : winding;
}

/**
 * A point exactly on a chord: the crossing rule has put it to the right of an upward chord, to the left of a downward
 * one and above a level one, so it belongs to the cap only where the cap lies on that side.
 */
function capHoldsChord(x0: number, y0: number, x1: number, y1: number, bulge: number): boolean {
  const right = y1 > y0 || (y1 === y0 && x1 < x0);
  return right ? bulge > 0 : bulge < 0;
}
