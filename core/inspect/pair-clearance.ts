import type { Region } from '../geometry/contour';
import type { Pair } from '../plan';
import { clearanceChart, type ChartPoint } from './clearance-chart';
import { clearanceMap, type ClearanceMap } from './clearance-map';
import { movedRegion, type Motion } from './motion';

/** The clearance of a pair as cut, the punch standing where a motion puts it. */
export interface PairClearance {
  readonly contourId: string;
  readonly punch: Region;
  readonly die: Region;
  readonly map: ClearanceMap;
  /** Clearance along the punch, one line a loop. */
  readonly chart: readonly (readonly ChartPoint[])[];
}

/** Null where the pair has no punch or no opening. */
export function pairClearance(
  pair: Pair,
  motion: Motion,
  wanted: number,
  tolerance: number,
): PairClearance | null {
  const punch = movedRegion(motion, pair.punch.asCut);
  const die = pair.die.asCut;
  const map = clearanceMap(punch, die, wanted, tolerance);
  return map && { contourId: pair.contourId, punch, die, map, chart: clearanceChart(map, punch) };
}
