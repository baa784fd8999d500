import type { Region } from './contour';
import { sidePieces, xAt, type SidePiece } from './side-pieces';

/** A region's sides, sorted for `sideSeparation`. */
export interface Sides {
  /** Greatest x first. */
  readonly fromRight: readonly SidePiece[];
  /** Lowest first. */
  readonly fromBelow: readonly SidePiece[];
  readonly leastX: number;
  /** Height of the tallest piece. */
  readonly tallest: number;
}

export function sidesOf(region: Region): Sides {
  const pieces = sidePieces(region);
  return {
    fromRight: [...pieces].sort((a, b) => b.greatestX - a.greatestX),
    fromBelow: [...pieces].sort((a, b) => a.lowY - b.lowY),
    leastX: pieces.reduce((least, { leastX }) => Math.min(least, leastX), Infinity),
    tallest: pieces.reduce((most, { lowY, highY }) => Math.max(most, highY - lowY), 0),
  };
}

/**
 * How far b, moved up by `up`, must be moved to the right so that at every height it lies right of a: the greatest
 * x of a less x of b at one height. Exact: the greatest is at an end of a piece or where two pieces run parallel.
 * −Infinity where they share no height. O(n log n) to prepare; then the pairs that share a height and can still be the
 * greatest.
 */
export function sideSeparation(a: Sides, b: Sides, up: number): number {
  let best = -Infinity;
  for (const p of a.fromRight) {
    if (p.greatestX - b.leastX <= best) break;
    for (let k = firstAbove(b, p.lowY - up - b.tallest); k < b.fromBelow.length; k++) {
      const q = b.fromBelow[k] as SidePiece;
      if (q.lowY + up > p.highY) break;
      if (p.greatestX - q.leastX > best) best = Math.max(best, greatestGap(p, q, up));
    }
  }
  return best;
}

/** The first piece that begins no lower than a height. */
function firstAbove({ fromBelow }: Sides, y: number): number {
  let low = 0;
  let high = fromBelow.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((fromBelow[middle] as SidePiece).lowY < y) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The greatest of x of p less x of q over the heights that they share, q moved up. */
function greatestGap(p: SidePiece, q: SidePiece, up: number): number {
  const low = Math.max(p.lowY, q.lowY + up);
  const high = Math.min(p.highY, q.highY + up);
  if (low > high) return -Infinity;
  const gap = (y: number) => xAt(p, y) - xAt(q, y - up);
  let best = Math.max(gap(low), gap(high));
  const level = levelOfParallels(p, q, up);
  if (level > low && level < high) best = Math.max(best, gap(level));
  return best;
}

/** The height at which two pieces run parallel; NaN where there is none, or where they always do. */
function levelOfParallels(p: SidePiece, q: SidePiece, up: number): number {
  if (p.radius === 0 && q.radius === 0) return Number.NaN;
  if (p.radius === 0) return q.cy + up + arcLevel(q, slope(p));
  if (q.radius === 0) return p.cy + arcLevel(p, slope(q));
  // (y − cy_p)/r_p = ±(y − cy_q)/r_q, with plus for two right or two left halves.
  const sign = p.half * q.half;
  return (p.cy * q.radius - sign * (q.cy + up) * p.radius) / (q.radius - sign * p.radius);
}

const slope = ({ lowX, highX, lowY, highY }: SidePiece): number => (highX - lowX) / (highY - lowY);

/** Height over an arc's centre at which its x changes by `m` for each step of y. */
const arcLevel = ({ radius, half }: SidePiece, m: number): number => (-half * m * radius) / Math.hypot(1, m);
