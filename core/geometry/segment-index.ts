import Flatbush from 'flatbush';
import type { PairVisitor } from './arrange';
import { num, segmentBoxes, squaredDistance, type SegmentTable } from './segment-table';
import { tolerance } from './tolerance';

/** A spatial index (R-tree, flatbush) over the segments of a table. */
export interface SegmentIndex {
  readonly table: SegmentTable;
  readonly boxes: Float64Array;
  /** Built when first asked for; null where there are no segments. */
  readonly tree: Flatbush | null;
}

export function indexOf(table: SegmentTable): SegmentIndex {
  const boxes = segmentBoxes(table);
  let tree: Flatbush | null | undefined;
  return {
    table,
    boxes,
    get tree() {
      return (tree ??= table.count === 0 ? null : treeOf(boxes, table.count));
    },
  };
}

function treeOf(boxes: Float64Array, count: number): Flatbush {
  const tree = new Flatbush(count);
  for (let i = 0; i < count; i++) {
    tree.add(num(boxes, 4 * i), num(boxes, 4 * i + 1), num(boxes, 4 * i + 2), num(boxes, 4 * i + 3));
  }
  tree.finish();
  return tree;
}

/** So many are looked at one by one in less time than a tree over them takes to build. */
export const fewSegments = 24;

/** Whether any segment comes nearer to a point than a distance. */
export function isNearer(index: SegmentIndex, x: number, y: number, distance: number): boolean {
  const { table } = index;
  const squared = distance * distance;
  if (table.count <= fewSegments) {
    for (let i = 0; i < table.count; i++) if (squaredDistance(table, i, x, y) < squared) return true;
    return false;
  }
  let found = false;
  index.tree?.search(x - distance, y - distance, x + distance, y + distance, (i) => {
    if (!found && squaredDistance(table, i, x, y) < squared) found = true;
    return false;
  });
  return found;
}

/** The nearest segment to a point (of several the first) and its distance, mm; `segment` -1 where none is within `within`. */
export function nearestSegment(
  { table, tree }: SegmentIndex,
  x: number,
  y: number,
  within = Infinity,
): { segment: number; distance: number } {
  let segment = -1;
  let best = within * within;
  // The tree gives boxes by distance, so the first box farther than the best segment ends the search.
  for (let reach = within, k = 0; tree && k < 64; k++) {
    reach = k === 0 && within === Infinity ? startReach(tree) : reach;
    const limit = Math.min(reach, within);
    tree.search(x - limit, y - limit, x + limit, y + limit, (i) => {
      const d = squaredDistance(table, i, x, y);
      if (d < best || (d === best && (segment < 0 || i < segment))) {
        best = d;
        segment = i;
      }
      return false;
    });
    if ((segment >= 0 && best <= limit * limit) || limit >= within) break;
    reach = 4 * limit;
  }
  return { segment, distance: Math.sqrt(best) };
}

/** All pairs of segments of one table whose boxes come within `room`, each once. */
export function pairsWithin(
  { table, boxes, tree }: SegmentIndex,
  room: number = tolerance.samePoint,
): PairVisitor {
  return (visit) => {
    for (let i = 0; tree && i < table.count; i++) {
      tree.search(
        num(boxes, 4 * i) - room,
        num(boxes, 4 * i + 1) - room,
        num(boxes, 4 * i + 2) + room,
        num(boxes, 4 * i + 3) + room,
        (j) => {
          if (j > i) visit(i, j);
          return false;
        },
      );
    }
  };
}

/** First guess for a nearest search without a limit: a hundredth of the whole. */
function startReach(tree: Flatbush): number {
  return Math.max(tree.maxX - tree.minX, tree.maxY - tree.minY) / 100 + tolerance.samePoint;
}
