import type { Point } from '../geometry/contour';
import { distanceOn, pointOn, type DistancePiece } from '../geometry/distance-profile';
import type { SegmentTable } from '../geometry/segment-table';
import { footOn } from '../geometry/site';

/** The clearance at one place of the punch. */
export interface ClearancePlace {
  /** mm; negative where punch and die overlap. */
  readonly clearance: number;
  readonly at: Point;
  /** The nearest point of the die. */
  readonly foot: Point;
  /** Length along the punch from its first vertex, mm; its loops follow one another. */
  readonly station: number;
}

/** A piece of the distance profile with its place along the punch. */
export interface MapPiece extends DistancePiece {
  readonly station: number;
}

/** The clearance at a fraction of a piece's segment. */
export function clearancePlace(table: SegmentTable, piece: MapPiece, fraction: number): ClearancePlace {
  const at = pointOn(table, piece.segment, fraction);
  return {
    clearance: distanceOn(table, piece, fraction),
    at,
    foot: footOn(piece.site, at.x, at.y),
    station: stationOf(piece, fraction),
  };
}

export function stationOf({ station, length, from, to }: MapPiece, fraction: number): number {
  return to === from ? station : station + (length * (fraction - from)) / (to - from);
}
