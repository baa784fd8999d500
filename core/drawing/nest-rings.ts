import Flatbush from 'flatbush';
import type { Box, Contour } from '../geometry/contour';
import { contourBox } from '../geometry/contour-measures';
import { pointAlong, squaredDistance, tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import { windingNumber } from '../geometry/winding';
import type { DrawingContour } from './drawing';
import { groupBy } from './group-by';
import type { Ring } from './ring';

/**
 * Rings nested by containment and named: the largest outer contour is c1, its holes follow by place (from the left,
 * then from below), each with what lies in it, then the next largest. Areas and places that agree within a hundredth
 * count as equal, so that rounding does not shuffle the names.
 */
export function nestRings(rings: readonly Ring[]): readonly DrawingContour[] {
  const boxes = rings.map(({ contour }) => contourBox(contour));
  const parents = parentsOf(rings, boxes);
  const childrenOf = groupBy(parents.keys(), (i) => parents[i] as number);
  const children = (parent: number): number[] => childrenOf.get(parent) ?? [];
  const byPlace = (a: number, b: number): number => comparePlaces(boxes[a] as Box, boxes[b] as Box) || a - b;
  const bySize = (a: number, b: number): number =>
    coarse((rings[b] as Ring).area) - coarse((rings[a] as Ring).area) || byPlace(a, b);
  const named: DrawingContour[] = [];
  const name = (at: number, depth: number, parentId: string | null): void => {
    const { contour, layer, gaps, fitError } = rings[at] as Ring;
    const id = `c${named.length + 1}`;
    const largestGap = Math.max(0, ...gaps.map(({ size }) => size));
    named.push({ id, contour, layer, depth, parentId, largestGap, fitError });
    for (const child of children(at).sort(byPlace)) name(child, depth + 1, id);
  };
  for (const outer of children(nobody).sort(bySize)) name(outer, 0, null);
  return named;
}

const nobody = -1;

/** In hundredths of a mm (or mm²), so that equal things compare equal. */
const coarse = (value: number): number => Math.round(value * 100);

const comparePlaces = (a: Box, b: Box): number =>
  coarse(a.minX) - coarse(b.minX) ||
  coarse(a.minY) - coarse(b.minY) ||
  coarse(a.maxX) - coarse(b.maxX) ||
  coarse(a.maxY) - coarse(b.maxY);

/** Of the rings around each ring the smallest; −1 for an outer one. */
function parentsOf(rings: readonly Ring[], boxes: readonly Box[]): readonly number[] {
  if (rings.length === 0) return [];
  const index = new Flatbush(rings.length);
  for (const { minX, minY, maxX, maxY } of boxes) index.add(minX, minY, maxX, maxY);
  index.finish();
  return rings.map((ring, i) => {
    const { minX, minY, maxX, maxY } = boxes[i] as Box;
    const around = index
      .search(minX, minY, maxX, maxY)
      .filter(
        (j) =>
          j !== i &&
          (rings[j] as Ring).area > ring.area &&
          isWithin(ring.contour, (rings[j] as Ring).contour),
      );
    return around.reduce(
      (best, j) => (best === nobody || (rings[j] as Ring).area < (rings[best] as Ring).area ? j : best),
      nobody,
    );
  });
}

/** By a point of the inner one that keeps clear of the outer; where they touch everywhere, neither holds the other. */
function isWithin(inner: Contour, outer: Contour): boolean {
  const probe = tableOfRegion([inner]);
  const table = tableOfRegion([outer]);
  const at = new Float64Array(2);
  for (const fraction of [0, 1 / 2]) {
    for (let i = 0; i < probe.count; i++) {
      pointAlong(probe, i, fraction, at);
      const [x, y] = at as unknown as [number, number];
      if (isClear(table, x, y)) return windingNumber(outer, x, y) !== 0;
    }
  }
  return false;
}

function isClear(table: ReturnType<typeof tableOfRegion>, x: number, y: number): boolean {
  for (let i = 0; i < table.count; i++) {
    if (squaredDistance(table, i, x, y) <= tolerance.gap * tolerance.gap) return false;
  }
  return true;
}
