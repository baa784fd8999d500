import type { Point, Region } from '../geometry/contour';
import { num, tableOfRegion, type SegmentTable } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import type { ClearanceMap } from './clearance-map';
import { clearancePlace, type ClearancePlace, type MapPiece } from './clearance-place';

/** What a lamp behind punch and die would show. */
export interface GapPicture {
  /**
   * Where light comes through if every clearance were so many times as wide: polygons from the die's edge to the
   * punch's, overlapping at corners. The true gap is light as well.
   */
  readonly light: readonly (readonly Point[])[];
  /** Where none comes through, and for how long along the punch, mm: 0 where it touches in a point. */
  readonly contacts: readonly { readonly at: Point; readonly length: number }[];
}

/** The gap of a clearance map, exaggerated; 1 is true to scale. */
export function gapPicture(map: ClearanceMap, punch: Region, exaggeration: number): GapPicture {
  const table = tableOfRegion(punch);
  return {
    light: map.pieces
      .filter(({ atFrom, atTo }) => Math.max(atFrom, atTo) > 0)
      .map((piece) => lightOf(table, piece, exaggeration)),
    contacts: contactsOf(map, table),
  };
}

/** Steps along a piece whose gap is bounded by an arc. */
const roundSteps = 12;

function lightOf(table: SegmentTable, piece: MapPiece, exaggeration: number): readonly Point[] {
  const isRound = num(table.radius, piece.segment) > 0 || piece.site.kind === 'circle';
  const steps = isRound ? roundSteps : 1;
  const places = Array.from({ length: steps + 1 }, (_, k) =>
    clearancePlace(table, piece, piece.from + ((piece.to - piece.from) * k) / steps),
  );
  return [
    ...places.map(({ foot }) => foot),
    ...places.reverse().map(({ at, foot }) => ({
      x: foot.x + exaggeration * (at.x - foot.x),
      y: foot.y + exaggeration * (at.y - foot.y),
    })),
  ];
}

function contactsOf(map: ClearanceMap, table: SegmentTable): GapPicture['contacts'] {
  const stretches = map.stretches.filter(({ band }) => band === 'contact');
  const isCovered = ({ station }: ClearancePlace) =>
    stretches.some(
      ({ from, to }) => station >= from - tolerance.sameBoundary && station <= to + tolerance.sameBoundary,
    );
  const points = map.pieces
    .filter(({ atFrom }) => atFrom <= tolerance.sameBoundary)
    .map((piece) => clearancePlace(table, piece, piece.from))
    .filter((place) => !isCovered(place));
  return [
    ...stretches.map(({ worst, from, to }) => ({ at: worst.at, length: to - from })),
    ...points.map(({ at }) => ({ at, length: 0 })),
  ];
}
