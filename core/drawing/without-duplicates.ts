import Flatbush from 'flatbush';
import type { Box, Chain } from '../geometry/contour';
import { boxAround, segmentBox } from '../geometry/contour-measures';
import { tolerance } from '../geometry/tolerance';
import { coverOf, type Cover } from './lies-on';

export interface Drawn {
  readonly chain: Chain;
  readonly length: number;
}

/**
 * What is left when pieces drawn twice, in whichever direction and from whichever start, have been taken out; the
 * earlier one stays. A short piece drawn over a part of a long one stays too: the outline may run through its ends.
 */
export function withoutDuplicates<T extends Drawn>(
  drawn: readonly T[],
): { readonly kept: readonly T[]; readonly dropped: readonly T[] } {
  if (drawn.length < 2) return { kept: drawn, dropped: [] };
  const boxes = drawn.map(({ chain }) => chainBox(chain));
  const index = new Flatbush(drawn.length);
  for (const { minX, minY, maxX, maxY } of boxes) index.add(minX, minY, maxX, maxY);
  index.finish();
  const isDropped = new Set<number>();
  const covers = new Map<number, Cover>();
  const coverAt = (i: number): Cover => {
    const known = covers.get(i) ?? coverOf((drawn[i] as T).chain, tolerance.duplicate);
    covers.set(i, known);
    return known;
  };
  drawn.forEach((probe, i) => {
    const box = boxes[i] as Box;
    const d = tolerance.duplicate;
    const near = index.search(box.minX - d, box.minY - d, box.maxX + d, box.maxY + d, (j) => {
      if (j >= i || isDropped.has(j) || !agree(boxes[j] as Box, box)) return false;
      return Math.abs((drawn[j] as T).length - probe.length) <= 2 * d;
    });
    if (near.some((j) => coverAt(j)(probe.chain))) isDropped.add(i);
  });
  return {
    kept: drawn.filter((_, i) => !isDropped.has(i)),
    dropped: drawn.filter((_, i) => isDropped.has(i)),
  };
}

export function chainBox(chain: Chain): Box {
  let box: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (let i = 0; i + 1 < chain.length; i++) {
    const [from, to] = [chain[i], chain[i + 1]];
    if (from && to) box = boxAround(box, segmentBox(from, to));
  }
  return box;
}

const agree = (a: Box, b: Box): boolean =>
  Math.abs(a.minX - b.minX) <= tolerance.duplicate &&
  Math.abs(a.minY - b.minY) <= tolerance.duplicate &&
  Math.abs(a.maxX - b.maxX) <= tolerance.duplicate &&
  Math.abs(a.maxY - b.maxY) <= tolerance.duplicate;
