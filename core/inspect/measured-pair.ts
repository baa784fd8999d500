import type { Point, Region } from '../geometry/contour';
import { clearanceMap, type ClearanceMap } from './clearance-map';
import { bandOf, type Band } from './band';
import type { ComparedPoint, Comparison } from './compare-points';
import { deviationAt, referenceOf } from './deviation';
import { realContour } from './real-contour';

/** A member's designed contour and the points measured on it, as they were compared. */
export interface MeasuredMember {
  readonly designed: Region;
  readonly comparison: Comparison;
}

/** The clearance at one measured point of either member. */
export interface PairPlace {
  readonly member: 'punch' | 'die';
  readonly id: string;
  readonly at: Point;
  readonly clearance: number;
  readonly band: Band;
}

export interface MeasuredPair {
  /** The clearance all round between both contours as they came out. */
  readonly map: ClearanceMap;
  readonly punch: Region;
  readonly die: Region;
  readonly places: readonly PairPlace[];
  readonly passes: boolean;
  /** The longest way without a measured point on either contour, mm. */
  readonly widestGap: { readonly punch: number; readonly die: number };
}

/**
 * The real clearance of a punch and a die by their measured points. Outliers count only where the comparison counted
 * them. Each measured point gets the distance to the other member's real contour and its verdict. Null where nothing
 * is left of either.
 */
export function measuredPair(
  punch: MeasuredMember,
  die: MeasuredMember,
  wanted: number,
  tolerance: number,
): MeasuredPair | null {
  const real = {
    punch: realContour(punch.designed, countedOf(punch.comparison), 'inside'),
    die: realContour(die.designed, countedOf(die.comparison), 'outside'),
  };
  const map = clearanceMap(real.punch.region, real.die.region, wanted, tolerance);
  if (!map) return null;
  const places = [
    ...placesOf('punch', punch.comparison, real.die.region),
    ...placesOf('die', die.comparison, real.punch.region),
  ].map((place): PairPlace => ({ ...place, band: bandOf(place.clearance, wanted, tolerance) }));
  return {
    map,
    punch: real.punch.region,
    die: real.die.region,
    places,
    passes: places.every(({ band }) => band === 'within'),
    widestGap: { punch: real.punch.widestGap, die: real.die.widestGap },
  };
}

const countedOf = ({ points, counted }: Comparison): readonly ComparedPoint[] =>
  counted === points.length ? points : points.filter(({ isOutlier }) => !isOutlier);

/** A punch keeps clear inside the die's opening, a die outside the punch. */
function placesOf(member: 'punch' | 'die', comparison: Comparison, other: Region) {
  const reference = referenceOf(other, member === 'punch' ? 'outside' : 'inside');
  return countedOf(comparison).map(({ id, at }) => ({
    member,
    id,
    at,
    clearance: deviationAt(reference, at).deviation,
  }));
}
