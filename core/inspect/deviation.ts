import type { Point, Region } from '../geometry/contour';
import { indexOf, nearestSegment, type SegmentIndex } from '../geometry/segment-index';
import { directionAt } from '../geometry/along-segment';
import { num, tableOfRegion } from '../geometry/segment-table';
import { footOn, nearestSite, offsetFrom } from '../geometry/site';
import { tolerance } from '../geometry/tolerance';
import { windingAt } from '../geometry/winding';

/** The true profile that points are compared with, and where its material lies. */
export interface Reference {
  readonly index: SegmentIndex;
  /** 1 where material lies inside the region (a part, a punch), −1 where it lies around it (a die opening). */
  readonly outward: 1 | -1;
}

export interface Deviation {
  /** mm, square to the profile: positive where there is more material than the profile has. */
  readonly deviation: number;
  /** Unit direction in which the deviation grows: out of the material. */
  readonly nx: number;
  readonly ny: number;
  /** The nearest point of the profile. */
  readonly foot: Point;
}

export const referenceOf = (region: Region, material: 'inside' | 'outside'): Reference => ({
  index: indexOf(tableOfRegion(region)),
  outward: material === 'inside' ? 1 : -1,
});

/** How far a point lies off the profile, and which way. The profile must not be empty. */
export function deviationAt({ index, outward }: Reference, { x, y }: Point): Deviation {
  const { table } = index;
  const { segment } = nearestSegment(index, x, y);
  const site = nearestSite(table, segment, x, y);
  const foot = footOn(site, x, y);
  const off = offsetFrom(site, x, y);
  if (site.kind === 'line') {
    // Loops run with their inside on the left, where a line's normal points.
    return { deviation: -outward * off, nx: -outward * site.nx, ny: -outward * site.ny, foot };
  }
  const length = off + site.radius;
  if (site.radius > 0 && length > tolerance.samePoint) {
    const side = outward * Math.sign(num(table.bulge, segment));
    return {
      deviation: side * off,
      nx: (side * (x - site.x)) / length,
      ny: (side * (y - site.y)) / length,
      foot,
    };
  }
  // At a corner: away from it, or, on it, square to the segment.
  const side = windingAt(index, x, y) > 0 ? -outward : outward;
  if (length > tolerance.samePoint) {
    return {
      deviation: side * off,
      nx: (side * (x - site.x)) / length,
      ny: (side * (y - site.y)) / length,
      foot,
    };
  }
  const along = new Float64Array(2);
  directionAt(table, segment, x, y, along);
  return { deviation: side * off, nx: outward * num(along, 1), ny: -outward * num(along, 0), foot };
}
