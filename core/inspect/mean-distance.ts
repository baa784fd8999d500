import { distanceOn, type DistancePiece } from '../geometry/distance-profile';
import type { SegmentTable } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';

/**
 * The mean signed distance over a profile, weighted by length, mm, within `distanceBound`: each piece by Gauss's rule
 * with seven points, halved until both halves agree with the whole. Every piece is smooth, a line facing a line is exact
 * at once.
 */
export function meanOf(table: SegmentTable, pieces: readonly DistancePiece[]): number {
  let sum = 0;
  let length = 0;
  for (const piece of pieces) {
    sum += meanOn(table, piece, piece.from, piece.to) * piece.length;
    length += piece.length;
  }
  return length === 0 ? 0 : sum / length;
}

function meanOn(table: SegmentTable, piece: DistancePiece, from: number, to: number, depth = 0): number {
  const whole = gauss(table, piece, from, to);
  const middle = (from + to) / 2;
  const halves = (gauss(table, piece, from, middle) + gauss(table, piece, middle, to)) / 2;
  // A tenth of the bound: the halves are far better than their difference from the whole.
  if (Math.abs(halves - whole) <= tolerance.distanceBound / 10 || depth >= deepest) return halves;
  return (meanOn(table, piece, from, middle, depth + 1) + meanOn(table, piece, middle, to, depth + 1)) / 2;
}

/** A half of a half … this often is below a double's digits of any piece. */
const deepest = 40;

function gauss(table: SegmentTable, piece: DistancePiece, from: number, to: number): number {
  return nodes.reduce(
    (sum, [node, weight]) =>
      sum + weight * distanceOn(table, piece, (from + to) / 2 + (node * (to - from)) / 2),
    0,
  );
}

/** Gauss–Legendre, seven points, weights halved (Abramowitz & Stegun, table 25.4). */
const nodes: readonly (readonly [number, number])[] = [
  [0, 0.417959183673469 / 2],
  [0.405845151377397, 0.381830050505119 / 2],
  [-0.405845151377397, 0.381830050505119 / 2],
  [0.741531185599394, 0.279705391489277 / 2],
  [-0.741531185599394, 0.279705391489277 / 2],
  [0.949107912342759, 0.12948496616887 / 2],
  [-0.949107912342759, 0.12948496616887 / 2],
];
