import type { Arrangement } from './arrange';
import { pointAlong } from './along-segment';
import { int, num } from './segment-table';
import * as portable from './portable-math';

/** What becomes of a run: left out, used as it runs, used the other way round. */
export const drop = 0;
export const forward = 1;
export const backward = 2;

/** Node at which a kept run starts when it is used as its fate says; `endOf` where it ends. */
export const startOf = (a: Arrangement, fate: Uint8Array, run: number): number =>
  fate[run] === backward ? int(a.endNode, run) : int(a.startNode, run);
export const endOf = (a: Arrangement, fate: Uint8Array, run: number): number =>
  fate[run] === backward ? int(a.startNode, run) : int(a.endNode, run);

/** Length of a run, mm. */
export function runLength(arrangement: Arrangement, run: number): number {
  let length = 0;
  for (let k = int(arrangement.runStart, run); k < int(arrangement.runStart, run + 1); k++) {
    length += pieceLength(arrangement, int(arrangement.pieceOrder, k));
  }
  return length;
}

/**
 * The point in the middle of the longest piece of a run: the safest one to judge the run by. It lies on the uncut
 * element, which merged nodes have not moved. Returns that piece.
 */
export function middleOfRun(arrangement: Arrangement, run: number, into: Float64Array): number {
  let longest = -1;
  let piece = -1;
  for (let k = int(arrangement.runStart, run); k < int(arrangement.runStart, run + 1); k++) {
    const candidate = int(arrangement.pieceOrder, k);
    const length = pieceLength(arrangement, candidate);
    if (length > longest) {
      longest = length;
      piece = candidate;
    }
  }
  pointAlong(
    arrangement.elements,
    int(arrangement.elementOf, piece),
    num(arrangement.middleAlong, piece),
    into,
  );
  return piece;
}

/** Length of a piece, mm. */
export function pieceLength({ pieces }: Arrangement, piece: number): number {
  const dx = num(pieces.x1, piece) - num(pieces.x0, piece);
  const dy = num(pieces.y1, piece) - num(pieces.y0, piece);
  const b = num(pieces.bulge, piece);
  if (b === 0) return Math.sqrt(dx * dx + dy * dy);
  return num(pieces.radius, piece) * 4 * portable.atan(Math.abs(b));
}
