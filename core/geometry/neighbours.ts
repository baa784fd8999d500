import { eachNearPair } from './near-pairs';
import type { SegmentIndex } from './segment-index';

/** For every segment of a table those that come within a distance of it (boxes compared), as compressed rows. */
export interface Neighbours {
  readonly within: number;
  /**
   * Neighbours of segment i are `list[start[i]] … list[start[i + 1] - 1]`, itself not among them; those that come after
   * it in the table stand first, up to `list[later[i] - 1]`.
   */
  readonly start: Int32Array;
  readonly later: Int32Array;
  readonly list: Int32Array;
}

/**
 * The neighbours of all segments within a distance, mm; null where there are so many that listing them would cost more
 * than searching each time (a distance much larger than the segments). O(n + k) for k pairs, see `eachNearPair`.
 */
export function neighboursWithin({ table, boxes }: SegmentIndex, within: number): Neighbours | null {
  const count = table.count;
  const most = 2 * count * worthListing;
  let pairs = new Int32Array(8 * count + 16);
  let used = 0;
  const degree = new Int32Array(count + 1);
  eachNearPair(boxes, count, within, (i, j) => {
    if (used + 2 > pairs.length) pairs = grown(pairs);
    pairs[used++] = i;
    pairs[used++] = j;
    degree[i] = (degree[i] as number) + 1;
    degree[j] = (degree[j] as number) + 1;
    return used > most;
  });
  return used > most ? null : asRows(within, degree, pairs, used);
}

/** Neighbours per segment up to which a list pays. */
const worthListing = 40;

function asRows(within: number, degree: Int32Array, pairs: Int32Array, used: number): Neighbours {
  const start = new Int32Array(degree.length);
  for (let i = 0; i + 1 < degree.length; i++) start[i + 1] = (start[i] as number) + (degree[i] as number);
  const next = start.slice();
  const list = new Int32Array(used);
  const put = (i: number, j: number): void => {
    const at = next[i] as number;
    list[at] = j;
    next[i] = at + 1;
  };
  for (let k = 0; k < used; k += 2) put(pairs[k] as number, pairs[k + 1] as number);
  const later = next.slice();
  for (let k = 0; k < used; k += 2) put(pairs[k + 1] as number, pairs[k] as number);
  return { within, start, later, list };
}

function grown(column: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(column.length * 2);
  larger.set(column);
  return larger;
}
