import Flatbush from 'flatbush';
import type { Box, Contour } from '../geometry/contour';
import { indexOf, isNearer, type SegmentIndex } from '../geometry/segment-index';
import { pointAlong } from '../geometry/along-segment';
import { tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import { windingAt } from '../geometry/winding';
import { groupBy } from './group-by';
import { limits } from './limits';
import type { Ring } from './ring';

/** A ring in its place among the others. */
export interface NestedRing {
  readonly ring: Ring;
  /** 0 an outer one, 1 a hole in it, 2 an island in the hole … */
  readonly depth: number;
  readonly parent: Ring | null;
}

/**
 * Rings nested by containment, in the order they are named: the largest outer one first, its holes follow by place (from
 * the left, then from below), each with what lies in it, then the next largest. Areas and places that agree within a
 * hundredth count as equal, so that rounding does not shuffle the names. Null where so much lies in one another that it would take
 * for ever.
 */
export function nestRings(rings: readonly Ring[]): readonly NestedRing[] | null {
  const boxes = rings.map(({ box }) => box);
  const parents = parentsOf(rings, boxes);
  if (!parents) return null;
  const childrenOf = groupBy(parents.keys(), (i) => parents[i] as number);
  const children = (parent: number): number[] => childrenOf.get(parent) ?? [];
  const byPlace = (a: number, b: number): number => comparePlaces(boxes[a] as Box, boxes[b] as Box) || a - b;
  const bySize = (a: number, b: number): number =>
    coarse((rings[b] as Ring).area) - coarse((rings[a] as Ring).area) || byPlace(a, b);
  const nested: NestedRing[] = [];
  // A stack, not recursion: rings may lie in one another ten thousand deep.
  const stack = children(nobody)
    .sort(bySize)
    .reverse()
    .map((at) => ({ at, depth: 0, parent: null as Ring | null }));
  for (let next = stack.pop(); next; next = stack.pop()) {
    const { at, depth, parent } = next;
    const ring = rings[at] as Ring;
    nested.push({ ring, depth, parent });
    for (const child of children(at).sort(byPlace).reverse())
      stack.push({ at: child, depth: depth + 1, parent: ring });
  }
  return nested;
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
function parentsOf(rings: readonly Ring[], boxes: readonly Box[]): readonly number[] | null {
  if (rings.length === 0) return [];
  const index = new Flatbush(rings.length);
  for (const { minX, minY, maxX, maxY } of boxes) index.add(minX, minY, maxX, maxY);
  index.finish();
  const segments = new Map<number, SegmentIndex>();
  const segmentsAt = (i: number): SegmentIndex => {
    const known = segments.get(i) ?? indexOf(tableOfRegion([(rings[i] as Ring).contour]));
    segments.set(i, known);
    return known;
  };
  let looked = 0;
  const parents: number[] = [];
  for (const [i, ring] of rings.entries()) {
    const { minX, minY, maxX, maxY } = boxes[i] as Box;
    const around = index.search(minX, minY, maxX, maxY, (j) => {
      looked++;
      const box = boxes[j] as Box;
      const isAround = box.minX <= minX && box.minY <= minY && box.maxX >= maxX && box.maxY >= maxY;
      return j !== i && isAround && (rings[j] as Ring).area > ring.area;
    });
    if (looked > limits.overlappingBoxes) return null;
    // The smallest first: the first that holds it is its parent.
    around.sort((a, b) => (rings[a] as Ring).area - (rings[b] as Ring).area || a - b);
    parents.push(around.find((j) => isWithin(ring.contour, segmentsAt(j))) ?? nobody);
  }
  return parents;
}

/** By a point of the inner one that keeps clear of the outer; where they touch everywhere, neither holds the other. */
function isWithin(inner: Contour, outer: SegmentIndex): boolean {
  const clear = inner.find(({ x, y }) => !isNearer(outer, x, y, tolerance.gap));
  if (clear) return windingAt(outer, clear.x, clear.y) !== 0;
  // Every corner touches: the middles of the edges may not.
  const probe = tableOfRegion([inner]);
  const at = new Float64Array(2);
  for (let i = 0; i < probe.count; i++) {
    pointAlong(probe, i, 1 / 2, at);
    const [x, y] = at as unknown as [number, number];
    if (!isNearer(outer, x, y, tolerance.gap)) return windingAt(outer, x, y) !== 0;
  }
  return false;
}
