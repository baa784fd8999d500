import type { Box, Chain } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import { coverOf, type Cover } from './lies-on';
import { PointGrid } from './point-grid';

export interface Distinct<T> {
  readonly kept: readonly T[];
  /** What was drawn again, each with the piece that stays in its place. */
  readonly dropped: readonly { readonly piece: T; readonly by: T }[];
}

/** What is compared of a piece; its chain is asked for only where the rest agrees. */
export interface Drawn<T> {
  readonly box: (piece: T) => Box;
  readonly length: (piece: T) => number;
  readonly chain: (piece: T) => Chain;
}

/**
 * What is left when pieces drawn twice, in whichever direction and from whichever start, have been taken out; the
 * earlier one stays. A short piece drawn over a part of a long one stays too: the outline may run through its ends.
 */
export function withoutDuplicates<T>(pieces: readonly T[], drawn: Drawn<T>): Distinct<T> {
  if (pieces.length < 2) return { kept: pieces, dropped: [] };
  const boxes = pieces.map(drawn.box);
  const x = new Float64Array(boxes.length);
  const y = new Float64Array(boxes.length);
  boxes.forEach(({ minX, minY, maxX, maxY }, i) => {
    x[i] = minX + maxY * mixed;
    y[i] = maxX * mixed + minY;
  });
  // Boxes that agree on every side agree in these mixtures; concentric or nested ones do not.
  const d = tolerance.duplicate;
  const grid = new PointGrid(x, y, d * (1 + mixed));
  const dropped = new Map<number, number>();
  const covers = new Map<number, Cover>();
  const coverAt = (i: number): Cover => {
    const known = covers.get(i) ?? coverOf(drawn.chain(pieces[i] as T), d);
    covers.set(i, known);
    return known;
  };
  let probe = 0;
  let by = -1;
  const look = (j: number): boolean => {
    const alike = agree(boxes[j] as Box, boxes[probe] as Box);
    if (!alike || (by >= 0 && j > by)) return false;
    const [a, b] = [pieces[j] as T, pieces[probe] as T];
    if (Math.abs(drawn.length(a) - drawn.length(b)) <= 2 * d && coverAt(j)(drawn.chain(b))) by = j;
    return false;
  };
  for (; probe < pieces.length; probe++) {
    by = -1;
    grid.near(x[probe] as number, y[probe] as number, look);
    if (by >= 0) dropped.set(probe, by);
    else grid.add(probe);
  }
  if (dropped.size === 0) return { kept: pieces, dropped: [] };
  return {
    kept: pieces.filter((_, i) => !dropped.has(i)),
    dropped: [...dropped].map(([i, other]) => ({ piece: pieces[i] as T, by: pieces[other] as T })),
  };
}

/** No simple fraction, so that boxes on a grid do not fall on one place. */
const mixed = Math.SQRT1_2;

const agree = (a: Box, b: Box): boolean =>
  Math.abs(a.minX - b.minX) <= tolerance.duplicate &&
  Math.abs(a.minY - b.minY) <= tolerance.duplicate &&
  Math.abs(a.maxX - b.maxX) <= tolerance.duplicate &&
  Math.abs(a.maxY - b.maxY) <= tolerance.duplicate;
