import type { Region } from '../geometry/contour';
import { distanceProfile } from '../geometry/distance-profile';
import { profileExtremes, type Extreme } from '../geometry/profile-extremes';
import { indexOf } from '../geometry/segment-index';
import { int, tableOfRegion, type SegmentTable } from '../geometry/segment-table';
import { clearanceBands, type MapStretch } from './clearance-bands';
import { clearancePlace, type ClearancePlace, type MapPiece } from './clearance-place';
import { meanOf } from './mean-distance';

/** The clearance all round: exact nearest distance from every point of the punch to the die opening. */
export interface ClearanceMap {
  readonly perimeter: number;
  readonly least: ClearancePlace;
  readonly greatest: ClearancePlace;
  readonly mean: number;
  readonly wanted: number;
  readonly tolerance: number;
  /** Length of the punch with a clearance outside wanted ± tolerance, mm. */
  readonly outside: number;
  readonly pieces: readonly MapPiece[];
  readonly stretches: readonly MapStretch[];
  /** Stations at which a loop of the punch begins, and the perimeter at the end. */
  readonly loops: readonly number[];
}

/**
 * The clearance map of a punch in a die opening against a wanted clearance and a tolerance either side, all mm. Least,
 * greatest and the places where a band begins are exact, the mean within `distanceBound`. Null where either is empty.
 */
export function clearanceMap(
  punch: Region,
  die: Region,
  wanted: number,
  tolerance: number,
): ClearanceMap | null {
  const table = tableOfRegion(punch);
  const profile = distanceProfile(table, indexOf(tableOfRegion(die)));
  const extremes = profileExtremes(table, profile);
  if (!extremes) return null;
  const pieces: MapPiece[] = [];
  let station = 0;
  for (const piece of profile) {
    pieces.push({ ...piece, station });
    station += piece.length;
  }
  const stretches = clearanceBands(table, pieces, wanted, tolerance);
  return {
    perimeter: station,
    least: placeOf(table, pieces, extremes.least),
    greatest: placeOf(table, pieces, extremes.greatest),
    mean: meanOf(table, pieces),
    wanted,
    tolerance,
    outside: stretches.reduce((sum, { band, from, to }) => (band === 'within' ? sum : sum + to - from), 0),
    pieces,
    stretches,
    loops: loopStarts(table, pieces, station),
  };
}

const placeOf = (table: SegmentTable, pieces: readonly MapPiece[], extreme: Extreme): ClearancePlace =>
  clearancePlace(table, pieces[extreme.piece] as MapPiece, extreme.fraction);

function loopStarts(table: SegmentTable, pieces: readonly MapPiece[], perimeter: number): readonly number[] {
  const starts = pieces
    .filter(({ segment, from }) => from === 0 && isLoopStart(table, segment))
    .map(({ station }) => station);
  return [...starts, perimeter];
}

/** A loop's segments follow one another in the table, the last leading back to the first. */
const isLoopStart = (table: SegmentTable, segment: number): boolean =>
  segment === 0 || int(table.next, segment - 1) !== segment;
