import type { Region } from './contour';
import { FacingSearch } from './facing-search';
import { indexOf } from './segment-index';
import { num, tableOfRegion } from './segment-table';
import type { Width } from './width';

/**
 * The narrowest place of a region (`inside`) or of what lies around it (`outside`): the smallest disc that touches the
 * boundary at two opposite points and holds no other point of it. Necks, parallel fingers, and walls between loops are
 * all found so; a sharp corner is not a width. Exact: such points are the feet of a common normal of two segments, or
 * reflex corners. Null where no two points face each other (a triangle), or none nearer than `within`. Segments are
 * compared with those nearer than the least width so far, by index; O(n²) cheap tests at worst.
 */
export function leastWidth(
  region: Region,
  side: 'inside' | 'outside',
  within: number = Infinity,
): Width | null {
  const index = indexOf(tableOfRegion(region));
  const { table, tree, boxes } = index;
  if (!tree) return null;
  const search = new FacingSearch(index, side === 'inside' ? 1 : -1, within);
  for (let i = 0; i < table.count; i++) {
    const room = search.best;
    tree.search(
      num(boxes, 4 * i) - room,
      num(boxes, 4 * i + 1) - room,
      num(boxes, 4 * i + 2) + room,
      num(boxes, 4 * i + 3) + room,
      (j) => {
        if (j >= i) search.tryPair(i, j);
        return false;
      },
    );
  }
  return search.found;
}
