import type { Box, Chain, Vertex } from '../geometry/contour';
import { segmentBox } from '../geometry/contour-measures';
import { tolerance } from '../geometry/tolerance';
import { coverOf, type Cover } from './lies-on';
import { PointGrid } from './point-grid';

export interface Drawn {
  readonly chain: Chain;
  readonly length: number;
}

export interface Distinct<T> {
  readonly kept: readonly T[];
  /** What was drawn again, each with the piece that stays in its place. */
  readonly dropped: readonly { readonly piece: T; readonly by: T }[];
}

/**
 * What is left when pieces drawn twice, in whichever direction and from whichever start, have been taken out; the
 * earlier one stays. A short piece drawn over a part of a long one stays too: the outline may run through its ends.
 */
export function withoutDuplicates<T extends Drawn>(drawn: readonly T[]): Distinct<T> {
  if (drawn.length < 2) return { kept: drawn, dropped: [] };
  const boxes = drawn.map(({ chain }) => chainBox(chain));
  const x = Float64Array.from(boxes, ({ minX, maxX }) => (minX + maxX) / 2);
  const y = Float64Array.from(boxes, ({ minY, maxY }) => (minY + maxY) / 2);
  // Boxes that agree have their middles within the same distance.
  const d = tolerance.duplicate;
  const grid = new PointGrid(x, y, d);
  const dropped = new Map<number, number>();
  const covers = new Map<number, Cover>();
  const coverAt = (i: number): Cover => {
    const known = covers.get(i) ?? coverOf((drawn[i] as T).chain, d);
    covers.set(i, known);
    return known;
  };
  drawn.forEach((probe, i) => {
    let by = -1;
    grid.near(x[i] as number, y[i] as number, (j) => {
      const other = drawn[j] as T;
      const alike = Math.abs(other.length - probe.length) <= 2 * d && agree(boxes[j] as Box, boxes[i] as Box);
      if (alike && (by < 0 || j < by) && coverAt(j)(probe.chain)) by = j;
      return false;
    });
    if (by >= 0) dropped.set(i, by);
    else grid.add(i);
  });
  if (dropped.size === 0) return { kept: drawn, dropped: [] };
  return {
    kept: drawn.filter((_, i) => !dropped.has(i)),
    dropped: [...dropped].map(([i, by]) => ({ piece: drawn[i] as T, by: drawn[by] as T })),
  };
}

export function chainBox(chain: Chain): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  const add = (x: number, y: number): void => {
    if (x < box.minX) box.minX = x;
    if (x > box.maxX) box.maxX = x;
    if (y < box.minY) box.minY = y;
    if (y > box.maxY) box.maxY = y;
  };
  for (let i = 0; i < chain.length; i++) {
    const { x, y, bulge } = chain[i] as Vertex;
    add(x, y);
    const to = chain[i + 1];
    if (bulge === 0 || !to) continue;
    const { minX, minY, maxX, maxY } = segmentBox(chain[i] as Vertex, to);
    add(minX, minY);
    add(maxX, maxY);
  }
  return box;
}

const agree = (a: Box, b: Box): boolean =>
  Math.abs(a.minX - b.minX) <= tolerance.duplicate &&
  Math.abs(a.minY - b.minY) <= tolerance.duplicate &&
  Math.abs(a.maxX - b.maxX) <= tolerance.duplicate &&
  Math.abs(a.maxY - b.maxY) <= tolerance.duplicate;
