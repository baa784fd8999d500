import type { Chain, Vertex } from './contour';
import { fitBiarc, type FittedPair } from './fit-biarc';
import type { FitCurve } from './fit-curve';
import { mergeArcs } from './fit-merge';
import * as portable from './portable-math';

export interface FittedArcs {
  /** Lines and arcs from the curve's start to its end, tangent where they meet. */
  readonly chain: Chain;
  /** Largest distance between the curve and the chain, found by searching for extrema, not at samples only. */
  readonly largestError: number;
}

/**
 * Lines and arcs that follow a curve within `tolerance` and run tangent into one another.
 *
 * Greedy: from where the last piece ended, the longest span that two tangent arcs (a biarc) can follow. A straight
 * or circular curve comes out as one line or as arcs of at most a half turn. A cusp is passed by a line no longer than
 * the tolerance.
 * After more than `most` arcs it gives up, with an infinite error.
 * Example: a quarter of the ellipse 20 × 10 at 0.0005 gives 16 arcs.
 */
export function fitArcs(curve: FitCurve, tolerance: number, most = Infinity): FittedArcs {
  const vertices: Vertex[] = [];
  const shortest = (curve.to - curve.from) / shortestSpan;
  let at = curve.from;
  let span = (curve.to - curve.from) / 2;
  let largestError = 0;
  while (at < curve.to) {
    const piece = longestPiece(curve, at, span, shortest, tolerance);
    vertices.push(...piece.fit.vertices);
    largestError = Math.max(largestError, piece.fit.error);
    span = piece.end - at;
    at = piece.end;
    if (vertices.length > most) return { chain: vertices, largestError: Infinity };
  }
  const end = curve.point(curve.to);
  vertices.push({ x: end.x, y: end.y, bulge: 0 });
  const merged = mergeArcs(vertices);
  return { chain: merged.chain, largestError: largestError + merged.largestShift };
}

/** A span is never shorter than this part of the curve: thirty halvings. */
const shortestSpan = 2 ** 30;
/** Attempts at a longer span once one holds. */
const mostAttempts = 6;
/** A span this near to the longest that the error foretells is long enough. */
const nearLongest = 1.06;
/** The error of a biarc grows with the third power of its span; some room for where it does not. */
const foretold = (tolerance: number, error: number): number =>
  Math.min(4, 0.98 * portable.cbrt(tolerance / Math.max(error, tolerance / 1000)));

interface Piece {
  readonly end: number;
  readonly fit: FittedPair;
}

function longestPiece(
  curve: FitCurve,
  at: number,
  guess: number,
  shortest: number,
  tolerance: number,
): Piece {
  const attempt = (length: number): Piece | null => {
    const end = at + length >= curve.to - shortest ? curve.to : at + length;
    const fit = fitBiarc(curve, at, end, tolerance);
    return fit.error <= tolerance ? { end, fit } : null;
  };
  let length = Math.min(guess, curve.to - at);
  let best = attempt(length);
  let bad = Infinity;
  // Narrow until a span holds.
  while (!best) {
    bad = length;
    length /= 2;
    if (length < shortest) throw new Error(`Broken assumption: a curve to fit does not jump (at ${at})`);
    best = attempt(length);
  }
  // Widen as far as the error foretells, and at least to the middle between what holds and what does not.
  for (let i = 0; i < mostAttempts && best.end < curve.to; i++) {
    const wider = foretold(tolerance, best.fit.error);
    if (wider < nearLongest || bad / length < nearLongest) break;
    const wanted: number = Math.min(
      length * wider,
      bad === Infinity ? Infinity : (length + bad) / 2,
      curve.to - at,
    );
    const piece = attempt(wanted);
    if (piece) [best, length] = [piece, wanted];
    else bad = wanted;
  }
  return best;
}
