import Flatbush from 'flatbush';
import { num } from './segment-table';

/**
 * Calls back with every pair i < j of boxes that come within a distance of each other, until `visit` answers true.
 * `boxes` holds four numbers each: least x, least y, greatest x, greatest y.
 *
 * Idea: a tree over the boxes in the order in which they stand, joined with itself. Segments follow each other along
 * a contour, so neighbours in order are neighbours in the plane and nothing needs sorting; a tree of boxes packed by
 * place (flatbush) and asked once per segment takes four times as long, and is used where the order is no help (many
 * small loops in no order). O(n + k) for k pairs of a contour that does not run to and fro, else O(n log n + k).
 */
export function eachNearPair(
  boxes: Float64Array,
  count: number,
  within: number,
  visit: (i: number, j: number) => boolean,
): void {
  const levels = levelsOf(boxes, count);
  if (count === 0) return;
  if (!isInOrder(levels, within)) {
    searchByPlace(boxes, count, within, visit);
    return;
  }
  // Nodes of one level still to be compared: level and both places. No more than a few wait on each level.
  const waiting = [levels.length - 1, 0, 0];
  for (let b = waiting.pop(); b !== undefined; b = waiting.pop()) {
    const a = waiting.pop() as number;
    const level = (waiting.pop() as number) - 1;
    const below = levels[level] as Float64Array;
    const endA = Math.min(4 * fanOut * (a + 1), below.length);
    const endB = Math.min(4 * fanOut * (b + 1), below.length);
    for (let i = 4 * fanOut * a; i < endA; i += 4) {
      const minX = num(below, i) - within;
      const minY = num(below, i + 1) - within;
      const maxX = num(below, i + 2) + within;
      const maxY = num(below, i + 3) + within;
      const first = a !== b ? 4 * fanOut * b : level === 0 ? i + 4 : i;
      for (let j = first; j < endB; j += 4) {
        if (num(below, j) > maxX || num(below, j + 2) < minX) continue;
        if (num(below, j + 1) > maxY || num(below, j + 3) < minY) continue;
        if (level > 0) waiting.push(level, i / 4, j / 4);
        else if (visit(i / 4, j / 4)) return;
      }
    }
  }
}

/** Boxes to a node. */
const fanOut = 4;

/** The boxes themselves and above them, level by level up to one, those around so many that follow each other. */
function levelsOf(boxes: Float64Array, count: number): Float64Array[] {
  const levels = [boxes.length === 4 * count ? boxes : boxes.subarray(0, 4 * count)];
  for (let size = count; size > 1 || levels.length === 1;) {
    const below = levels[levels.length - 1] as Float64Array;
    const nodes = Math.ceil(size / fanOut);
    const level = new Float64Array(4 * nodes);
    for (let node = 0; node < nodes; node++) {
      let minX = Infinity;
      let minY = Infinity;
      let maxX = -Infinity;
      let maxY = -Infinity;
      for (let i = fanOut * node; i < Math.min(size, fanOut * (node + 1)); i++) {
        if (num(below, 4 * i) < minX) minX = num(below, 4 * i);
        if (num(below, 4 * i + 1) < minY) minY = num(below, 4 * i + 1);
        if (num(below, 4 * i + 2) > maxX) maxX = num(below, 4 * i + 2);
        if (num(below, 4 * i + 3) > maxY) maxY = num(below, 4 * i + 3);
      }
      level[4 * node] = minX;
      level[4 * node + 1] = minY;
      level[4 * node + 2] = maxX;
      level[4 * node + 3] = maxY;
    }
    levels.push(level);
    size = nodes;
  }
  return levels;
}

/** Whether the boxes round a few that follow each other are no larger than those few in a row, as along a contour. */
function isInOrder([boxes, above]: readonly Float64Array[], within: number): boolean {
  if (!boxes || !above) return true;
  return sizeOf(above, 0) <= 2 * sizeOf(boxes, within);
}

function sizeOf(boxes: Float64Array, room: number): number {
  let size = 0;
  for (let i = 0; i < boxes.length; i += 4) {
    size += num(boxes, i + 2) - num(boxes, i) + num(boxes, i + 3) - num(boxes, i + 1) + room;
  }
  return size;
}

function searchByPlace(
  boxes: Float64Array,
  count: number,
  within: number,
  visit: (i: number, j: number) => boolean,
): void {
  const tree = new Flatbush(count);
  for (let i = 0; i < 4 * count; i += 4) {
    tree.add(num(boxes, i), num(boxes, i + 1), num(boxes, i + 2), num(boxes, i + 3));
  }
  tree.finish();
  let stopped = false;
  for (let i = 0; i < count && !stopped; i++) {
    const [x0, y0] = [num(boxes, 4 * i) - within, num(boxes, 4 * i + 1) - within];
    const [x1, y1] = [num(boxes, 4 * i + 2) + within, num(boxes, 4 * i + 3) + within];
    tree.search(x0, y0, x1, y1, (j) => {
      if (j > i && !stopped) stopped = visit(i, j);
      return false;
    });
  }
}
