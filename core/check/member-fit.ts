import type { Region } from '../geometry/contour';
import { distanceProfile } from '../geometry/distance-profile';
import { profileExtremes } from '../geometry/profile-extremes';
import { indexOf } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import type { Fit } from '../plan';

/**
 * Least and greatest distance from the as-cut punch to the as-cut die opening, mm, signed: negative where the punch
 * would strike the die, by how far it reaches into it. Both exact. Null where either has no contour.
 */
export function memberFit(punch: Region, die: Region): Fit | null {
  const table = tableOfRegion(punch);
  const extremes = profileExtremes(table, distanceProfile(table, indexOf(tableOfRegion(die))));
  if (!extremes) return null;
  const { least, greatest } = extremes;
  return { least: least.distance, greatest: greatest.distance, leastAt: least.at };
}
