import Flatbush from 'flatbush';
import type { Drawing } from '../../core/drawing/drawing';
import { segmentBox } from '../../core/geometry/contour-measures';
import type { Box, Vertex } from '../../core/geometry/contour';

/** One segment of a closed contour of the drawing, taken or left out. */
export interface ContourSegment {
  readonly contourId: string;
  readonly isTaken: boolean;
  readonly from: Vertex;
  readonly to: Vertex;
}

/** All contours' segments, to be asked for by place. */
export interface DrawingIndex {
  segmentsIn(box: Box): readonly ContourSegment[];
}

/** The index of a drawing, made once for each. */
export function drawingIndex(drawing: Drawing): DrawingIndex {
  const known = made.get(drawing) ?? makeIndex(drawing);
  made.set(drawing, known);
  return known;
}

const made = new WeakMap<Drawing, DrawingIndex>();

function makeIndex({ contours, leftOut }: Drawing): DrawingIndex {
  const segments: ContourSegment[] = [];
  const add = (contourId: string, isTaken: boolean, contour: readonly Vertex[]): void => {
    contour.forEach((from, i) => {
      const to = contour[i + 1] ?? contour[0];
      if (to) segments.push({ contourId, isTaken, from, to });
    });
  };
  for (const { id, contour } of contours) add(id, true, contour);
  for (const { id, contour } of leftOut) add(id, false, contour);
  if (segments.length === 0) return { segmentsIn: () => [] };
  const tree = new Flatbush(segments.length);
  for (const { from, to } of segments) {
    const { minX, minY, maxX, maxY } = segmentBox(from, to);
    tree.add(minX, minY, maxX, maxY);
  }
  tree.finish();
  return {
    segmentsIn: ({ minX, minY, maxX, maxY }) =>
      tree
        .search(minX, minY, maxX, maxY)
        .sort((a, b) => a - b)
        .flatMap((i) => segments[i] ?? []),
  };
}
