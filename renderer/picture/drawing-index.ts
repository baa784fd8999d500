import type { Drawing } from '../../core/drawing/drawing';
import type { Contour } from '../../core/geometry/contour';
import { segmentLookup, segmentsOf, type PlainSegment, type SegmentLookup } from './segment-lookup';

/** One segment of a closed contour of the drawing. */
export interface ContourSegment extends PlainSegment {
  readonly contourId: string;
}

/** Contours' segments, to be asked for by place. */
export interface DrawingIndex {
  readonly all: SegmentLookup<ContourSegment>;
  /** Those that are not taken. */
  readonly leftOut: SegmentLookup<ContourSegment>;
}

/** The index of a drawing, made once for each. */
export function drawingIndex(drawing: Drawing): DrawingIndex {
  const index = made.get(drawing) ?? makeIndex(drawing);
  made.set(drawing, index);
  return index;
}

const made = new WeakMap<Drawing, DrawingIndex>();

function makeIndex({ contours, leftOut }: Drawing): DrawingIndex {
  const segments = (list: readonly { readonly id: string; readonly contour: Contour }[]): ContourSegment[] =>
    list.flatMap(({ id, contour }) => segmentsOf(contour, { contourId: id }));
  const aside = segments(leftOut);
  return { all: segmentLookup([...segments(contours), ...aside]), leftOut: segmentLookup(aside) };
}
