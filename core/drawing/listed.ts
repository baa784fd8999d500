import type { Box, Chain, Point } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import { coverOf, type Cover } from './lies-on';
import { PointGrid } from './point-grid';
import { sortByPlace } from './sort-by-place';

/**
 * Pieces with what is asked of them most in a column beside them: start, end, box and length. Reading it from the
 * pieces again and again, in an order that is not theirs in memory, would cost more than all the work on it.
 */
export interface Listed<T> {
  readonly items: readonly T[];
  /** Nine numbers an item: x and y of its start, of its end, its box, its length. */
  readonly columns: Float64Array;
}

export const stride = 9;

/** Lists items in the order they were made in. */
export function listed<T>(
  items: readonly T[],
  describe: (item: T) => {
    readonly start: Point;
    readonly end: Point;
    readonly box: Box;
    readonly length: number;
  },
): Listed<T> {
  const columns = new Float64Array(stride * items.length);
  items.forEach((item, i) => {
    const { start, end, box, length } = describe(item);
    let at = stride * i;
    columns[at++] = start.x;
    columns[at++] = start.y;
    columns[at++] = end.x;
    columns[at++] = end.y;
    columns[at++] = box.minX;
    columns[at++] = box.minY;
    columns[at++] = box.maxX;
    columns[at++] = box.maxY;
    columns[at] = length;
  });
  return { items, columns };
}

/** The items of a list by their lesser end, then by the other, then as `compare` says. */
export function sortedList<T>({ items, columns }: Listed<T>, compare: (a: T, b: T) => number): Listed<T> {
  const x = new Float64Array(items.length);
  const y = new Float64Array(items.length);
  const farX = new Float64Array(items.length);
  const farY = new Float64Array(items.length);
  for (let i = 0, at = 0; i < items.length; i++, at += stride) {
    const [x0, y0] = [columns[at] as number, columns[at + 1] as number];
    const [x1, y1] = [columns[at + 2] as number, columns[at + 3] as number];
    const isForward = x0 < x1 || (x0 === x1 && y0 <= y1);
    x[i] = isForward ? x0 : x1;
    y[i] = isForward ? y0 : y1;
    farX[i] = isForward ? x1 : x0;
    farY[i] = isForward ? y1 : y0;
  }
  const order = sortByPlace(x, y, (a, b) => {
    const far = (farX[a] as number) - (farX[b] as number) || (farY[a] as number) - (farY[b] as number);
    return far || compare(items[a] as T, items[b] as T);
  });
  return picked({ items, columns }, order);
}

export interface Distinct<T> {
  readonly kept: Listed<T>;
  /** What was drawn again, each with the piece that stays in its place. */
  readonly dropped: readonly { readonly piece: T; readonly by: T }[];
}

/**
 * What is left when pieces drawn twice, in whichever direction and from whichever start, have been taken out; the
 * earlier one stays. A short piece drawn over a part of a long one stays too: the outline may run through its ends.
 */
export function distinctList<T>(list: Listed<T>, chainOf: (item: T) => Chain): Distinct<T> {
  const { items, columns } = list;
  const number = (i: number, k: number): number => columns[stride * i + k] as number;
  const x = new Float64Array(items.length);
  const y = new Float64Array(items.length);
  for (let i = 0; i < items.length; i++) {
    x[i] = number(i, 4) + number(i, 7) * mixed;
    y[i] = number(i, 6) * mixed + number(i, 5);
  }
  const d = tolerance.duplicate;
  // Boxes that agree on every side agree in these mixtures; concentric or nested ones do not.
  const grid = new PointGrid(x, y, d * (1 + mixed));
  const covers = new Map<number, Cover>();
  const coverAt = (i: number): Cover => {
    const known = covers.get(i) ?? coverOf(chainOf(items[i] as T), d);
    covers.set(i, known);
    return known;
  };
  const dropped = new Map<number, number>();
  let probe = 0;
  let by = -1;
  const look = (j: number): boolean => {
    if (by >= 0 && j > by) return false;
    for (let k = 4; k < 8; k++) if (Math.abs(number(j, k) - number(probe, k)) > d) return false;
    if (Math.abs(number(j, 8) - number(probe, 8)) > 2 * d) return false;
    if (coverAt(j)(chainOf(items[probe] as T))) by = j;
    return false;
  };
  for (; probe < items.length; probe++) {
    by = -1;
    grid.near(x[probe] as number, y[probe] as number, look);
    if (by >= 0) dropped.set(probe, by);
    else grid.add(probe);
  }
  if (dropped.size === 0) return { kept: list, dropped: [] };
  const kept = Int32Array.from([...items.keys()].filter((i) => !dropped.has(i)));
  return {
    kept: picked(list, kept),
    dropped: [...dropped].map(([i, other]) => ({ piece: items[i] as T, by: items[other] as T })),
  };
}

/** No simple fraction, so that boxes on a grid do not fall on one place. */
const mixed = Math.SQRT1_2;

function picked<T>({ items, columns }: Listed<T>, order: Int32Array): Listed<T> {
  const copied = new Float64Array(stride * order.length);
  let at = 0;
  for (const i of order) {
    for (let k = stride * i; k < stride * (i + 1); k++) copied[at++] = columns[k] as number;
  }
  return { items: Array.from(order, (i) => items[i] as T), columns: copied };
}
