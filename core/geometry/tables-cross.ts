import { crossSegments, crossingRoom } from './cross-segments';
import type { SegmentIndex } from './segment-index';
import { num, segmentBoxes, type SegmentTable } from './segment-table';

/** Whether any segment of a table meets one of an index, be it only in a point. O(n log n). */
export function tablesCross(table: SegmentTable, other: SegmentIndex): boolean {
  const boxes = segmentBoxes(table);
  const out = new Float64Array(crossingRoom);
  let found = false;
  for (let i = 0; i < table.count && !found; i++) {
    other.tree?.search(
      num(boxes, 4 * i),
      num(boxes, 4 * i + 1),
      num(boxes, 4 * i + 2),
      num(boxes, 4 * i + 3),
      (j) => {
        found = found || crossSegments(table, i, other.table, j, out) > 0;
        return false;
      },
    );
  }
  return found;
}
