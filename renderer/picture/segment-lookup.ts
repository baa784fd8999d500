import { nearestPoint, type BoundaryPlace } from '../../core/geometry/nearest-point';
import { indexOf } from '../../core/geometry/segment-index';
import { addSegment, emptyTable } from '../../core/geometry/segment-table';
import type { Box, Contour, Point, Vertex } from '../../core/geometry/contour';

/** Segments with whatever belongs to them, to be asked for by place. */
export interface SegmentLookup<S> {
  /** Those whose box touches a box, in the order in which they were given. */
  segmentsIn(box: Box): readonly S[];
  /** The one that comes nearest to a point, and where; null where none comes within `within` mm. */
  nearest(at: Point, within: number): { readonly segment: S; readonly place: BoundaryPlace } | null;
}

export interface PlainSegment {
  readonly from: Vertex;
  readonly to: Vertex;
}

/** Answers through the geometry's own index and distances. Segments of no length are points. */
export function segmentLookup<S extends PlainSegment>(segments: readonly S[]): SegmentLookup<S> {
  const table = emptyTable(segments.length);
  for (const { from, to } of segments) addSegment(table, from.x, from.y, to.x, to.y, from.bulge);
  const index = indexOf(table);
  return {
    segmentsIn: ({ minX, minY, maxX, maxY }) =>
      (index.tree?.search(minX, minY, maxX, maxY) ?? [])
        .sort((a, b) => a - b)
        .flatMap((i) => segments[i] ?? []),
    nearest: (at, within) => {
      const place = nearestPoint(index, at, within);
      const segment = place && segments[place.segment];
      return segment && place ? { segment, place } : null;
    },
  };
}

/** Every segment of a contour, with what belongs to all of them. */
export const segmentsOf = <T extends object>(contour: Contour, common: T): (T & PlainSegment)[] =>
  contour.map((from, i) => ({ ...common, from, to: contour[(i + 1) % contour.length] ?? from }));
