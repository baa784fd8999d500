import type { Contour, Region } from '../../core/geometry/contour';
import { offsetRegion } from '../../core/geometry/offset-region';
import { indexOf, nearestSegment, type SegmentIndex } from '../../core/geometry/segment-index';
import { tableOfRegion } from '../../core/geometry/segment-table';
import { clipperOffset } from './clipper-offset';
import {
  comparedChord,
  compareWithPolygons,
  eachPoint,
  type RegionComparison,
} from './compare-with-polygons';

export interface OffsetComparison extends RegionComparison {
  /** Largest error of the distance from an output point (ends and middles) to the source, mm; how many, and how many over 1e-9. */
  readonly error: number;
  readonly points: number;
  readonly overNanometre: number;
}

/** Compares an offset of a contour, ours unless given, with clipper-lib's (6.4.2, Boost licence), polygons at `comparedChord`. */
export function compareOffset(
  contour: Contour,
  distance: number,
  ours: Region = offsetRegion([contour], distance),
): OffsetComparison {
  const exactness = errorsOf(ours, indexOf(tableOfRegion([contour])), Math.abs(distance));
  const theirs = clipperOffset([contour], distance, comparedChord);
  const found = compareWithPolygons(ours, theirs);
  const isExact = exactness.error <= 1e-6;
  const say = `${found.say}, error ${exactness.error.toExponential(2)}`;
  return { ...found, ...exactness, say, verdict: isExact ? found.verdict : 'differs' };
}

function errorsOf(
  region: Region,
  source: SegmentIndex,
  distance: number,
): { error: number; points: number; overNanometre: number } {
  let [error, points, overNanometre] = [0, 0, 0];
  eachPoint(region, (x, y) => {
    const off = Math.abs(nearestSegment(source, x, y).distance - distance);
    points++;
    if (off > 1e-9) overNanometre++;
    if (off > error) error = off;
  });
  return { error, points, overNanometre };
}
