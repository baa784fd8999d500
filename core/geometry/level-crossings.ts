import type { Region } from './contour';
import { sidePieces, xAt } from './side-pieces';

/** A stretch of a level line. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/**
 * The stretches of the line at a height that lie inside a region (outer loops counter-clockwise, holes clockwise), from
 * left to right. A height through a vertex counts it once.
 */
export function levelIntervals(region: Region, y: number): readonly Interval[] {
  const crossings = sidePieces(region)
    .filter(({ lowY, highY }) => lowY <= y && y < highY)
    .map((piece) => xAt(piece, y))
    .sort((a, b) => a - b);
  const intervals: Interval[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    intervals.push({ from: crossings[i] as number, to: crossings[i + 1] as number });
  }
  return intervals;
}

/** What is left of an interval where others are taken out of it. */
export function withoutIntervals(whole: Interval, out: readonly Interval[]): readonly Interval[] {
  const left: Interval[] = [];
  let from = whole.from;
  for (const one of [...out].sort((a, b) => a.from - b.from)) {
    if (one.from > from) left.push({ from, to: Math.min(one.from, whole.to) });
    from = Math.max(from, one.to);
  }
  if (from < whole.to) left.push({ from, to: whole.to });
  return left.filter((one) => one.to > one.from);
}
