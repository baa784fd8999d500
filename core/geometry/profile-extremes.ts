import type { Point } from './contour';
import { pointOn, type DistancePiece } from './distance-profile';
import type { SegmentTable } from './segment-table';

export interface Extreme {
  /** Signed distance, mm. */
  readonly distance: number;
  /** The place on the table's segments. */
  readonly at: Point;
  /** Index of the piece, and the fraction of its segment. */
  readonly piece: number;
  readonly fraction: number;
}

/**
 * The least and the greatest signed distance of a profile: since every piece only rises or falls, one of the pieces'
 * ends. The first of equal ones. Null for an empty profile.
 */
export function profileExtremes(
  table: SegmentTable,
  profile: readonly DistancePiece[],
): { readonly least: Extreme; readonly greatest: Extreme } | null {
  const ends = profile.flatMap(({ from, to, atFrom, atTo }, piece) => [
    { piece, fraction: from, distance: atFrom },
    { piece, fraction: to, distance: atTo },
  ]);
  const [first] = ends;
  if (!first) return null;
  const least = ends.reduce((best, end) => (end.distance < best.distance ? end : best), first);
  const greatest = ends.reduce((best, end) => (end.distance > best.distance ? end : best), first);
  const placed = (end: typeof first): Extreme => ({
    ...end,
    at: pointOn(table, (profile[end.piece] as DistancePiece).segment, end.fraction),
  });
  return { least: placed(least), greatest: placed(greatest) };
}
