import type { Chain, Vertex } from './contour';
import { fitBiarc, type FittedPair } from './fit-biarc';
import type { FitCurve } from './fit-curve';
import { mergeArcs } from './fit-merge';

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
 * Example: a quarter of the ellipse 20 × 10 at 0.0005 gives 16 arcs.
 */
export function fitArcs(curve: FitCurve, tolerance: number): FittedArcs {
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
  }
  const end = curve.point(curve.to);
  vertices.push({ x: end.x, y: end.y, bulge: 0 });
  const merged = mergeArcs(vertices);
  return { chain: merged.chain, largestError: largestError + merged.largestShift };
}

/** A span is never shorter than this part of the curve: thirty halvings. */
const shortestSpan = 2 ** 30;
/** Halvings of the last step when looking for the longest span: to a 256th of it. */
const halvings = 8;

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
  let good = 0;
  let best: Piece | null = null;
  let bad = Infinity;
  let length = Math.min(guess, curve.to - at);
  // Widen from the last span's length until a span fails, or narrow until one holds.
  while (bad === Infinity || !best) {
    const piece = attempt(length);
    if (piece) {
      if (piece.end === curve.to) return piece;
      good = length;
      best = piece;
      if (bad !== Infinity) break;
      length *= 2;
    } else {
      bad = length;
      if (best) break;
      length /= 2;
      if (length < shortest) throw new Error(`Broken assumption: a curve to fit does not jump (at ${at})`);
    }
  }
  for (let i = 0; i < halvings; i++) {
    const middle = (good + bad) / 2;
    const piece = attempt(middle);
    if (piece) {
      good = middle;
      best = piece;
      if (piece.end === curve.to) break;
    } else bad = middle;
  }
  return best;
}
