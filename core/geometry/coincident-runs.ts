import type { Arrangement } from './arrange';
import { drop, pieceLength, runLength, startOf } from './runs';
import { pointAlong } from './along-segment';
import { int, num, squaredDistance } from './segment-table';
import { tolerance } from './tolerance';

/**
 * Drops kept runs that coincide from end to end: two that run opposite ways bound nothing and cancel, of two that run
 * the same way one is enough. Runs that only share a part of their way (a channel that ends in a wedge) stay. O(r).
 */
export function cancelCoincident(a: Arrangement, fate: Uint8Array): void {
  const byEnds = new Map<number, number[]>();
  const nodeSpan = a.pieces.count * 4 + 64;
  for (let run = 0; run < a.runCount; run++) {
    if (fate[run] === drop || int(a.startNode, run) < 0) continue;
    const from = int(a.startNode, run);
    const to = int(a.endNode, run);
    const key = Math.min(from, to) * nodeSpan + Math.max(from, to);
    const same = byEnds.get(key);
    if (same) same.push(run);
    else byEnds.set(key, [run]);
  }
  for (const runs of byEnds.values()) {
    for (let m = 0; m < runs.length; m++) {
      for (let k = m + 1; k < runs.length; k++) {
        const first = runs[m] as number;
        const second = runs[k] as number;
        if (fate[first] === drop || fate[second] === drop) continue;
        if (!isSameWay(a, first, second) || !isSameWay(a, second, first)) continue;
        if (startOf(a, fate, first) !== startOf(a, fate, second)) fate[first] = drop;
        fate[second] = drop;
      }
    }
  }
}

const near = 2 * tolerance.samePoint;

/** Whether the middle of every piece of one run lies on another run between the same nodes. O(pieces). */
function isSameWay(a: Arrangement, run: number, other: number): boolean {
  const middle = new Float64Array(2);
  const whole = runLength(a, run);
  if (Math.abs(whole - runLength(a, other)) > near * (2 + piecesOf(a, run) + piecesOf(a, other)))
    return false;
  const against = int(a.startNode, run) !== int(a.startNode, other);
  const onOther = placesAlong(a, other, against);
  let passed = 0;
  for (let k = int(a.runStart, run); k < int(a.runStart, run + 1); k++) {
    const piece = int(a.pieceOrder, k);
    const length = pieceLength(a, piece);
    pointAlong(a.elements, int(a.elementOf, piece), num(a.middleAlong, piece), middle);
    if (!onOther(passed + length / 2, num(middle, 0), num(middle, 1))) return false;
    passed += length;
  }
  return true;
}

const piecesOf = (a: Arrangement, run: number): number => int(a.runStart, run + 1) - int(a.runStart, run);

/** Asks, for growing lengths along a run, whether a point lies on the run's piece at that length or one beside it. */
function placesAlong(
  a: Arrangement,
  run: number,
  backwards: boolean,
): (length: number, x: number, y: number) => boolean {
  const first = int(a.runStart, run);
  const count = piecesOf(a, run);
  const pieceAt = (k: number): number => int(a.pieceOrder, backwards ? first + count - 1 - k : first + k);
  let at = 0;
  let endOfPiece = pieceLength(a, pieceAt(0));
  return (length, x, y) => {
    while (endOfPiece < length && at + 1 < count) endOfPiece += pieceLength(a, pieceAt(++at));
    for (let k = Math.max(0, at - 1); k <= Math.min(count - 1, at + 1); k++)
      if (squaredDistance(a.pieces, pieceAt(k), x, y) <= near * near) return true;
    return false;
  };
}
