import type { Box, Region } from '../geometry/contour';
import { indexOf, nearestSegment } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import { windingAt } from '../geometry/winding';
import { screwByBlock, screwEdge } from './die-rules';

export interface ScrewPlace {
  readonly kind: 'screw' | 'dowel';
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
  /** From its middle to the nearest opening, mm; negative inside one. */
  readonly distance: number;
  /** Whether there is enough steel between it and the openings. */
  readonly isFree: boolean;
}

/**
 * Four screws in the corners of a die block and two dowels beside two of them, not opposite each other, so that the
 * block goes on one way only: each one and a half diameters from the edges and from the openings (common practice).
 */
export function screwPlaces(block: Box, openings: Region, blockThickness: number): readonly ScrewPlace[] {
  const diameter = screwByBlock.find(({ upTo }) => blockThickness <= upTo)?.diameter ?? 12;
  const inset = screwEdge.value * diameter;
  const [left, right] = [block.minX + inset, block.maxX - inset];
  const [bottom, top] = [block.minY + inset, block.maxY - inset];
  const index = indexOf(tableOfRegion(openings));
  const place = (kind: ScrewPlace['kind'], x: number, y: number): ScrewPlace => {
    const away = nearestSegment(index, x, y).distance;
    const distance = windingAt(index, x, y) > 0 ? -away : away;
    return { kind, x, y, diameter, distance, isFree: distance >= inset };
  };
  return [
    place('screw', left, bottom),
    place('screw', right, bottom),
    place('screw', right, top),
    place('screw', left, top),
    place('dowel', left + 2.5 * diameter, bottom),
    // Nearer to its screw than the first to its own: turned by a half turn the block does not fit.
    place('dowel', right - 2 * diameter, top),
  ];
}
