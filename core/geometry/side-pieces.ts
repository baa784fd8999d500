import type { Point, Region } from './contour';
import { arcOf, eachSegment } from './contour-measures';
import * as portable from './portable-math';

/**
 * A piece of a boundary along which x is one function of y: a line, or the left or right half of an arc. Level lines
 * are left out: their ends belong to their neighbours.
 */
export interface SidePiece {
  readonly lowY: number;
  readonly highY: number;
  readonly leastX: number;
  readonly greatestX: number;
  /** x at lowY and at highY. */
  readonly lowX: number;
  readonly highX: number;
  /** 0 for a line; else the arc's radius, its centre, and whether it is the right (1) or left (−1) half. */
  readonly radius: number;
  readonly cx: number;
  readonly cy: number;
  readonly half: 1 | -1;
}

/** The pieces of all boundaries of a region. */
export function sidePieces(region: Region): readonly SidePiece[] {
  const pieces: SidePiece[] = [];
  for (const contour of region) {
    eachSegment(contour, (from, to) => {
      if (from.bulge === 0) {
        if (from.y === to.y) return;
        const [low, high] = from.y < to.y ? [from, to] : [to, from];
        pieces.push(piece(low.y, high.y, low.x, high.x, 0, 0, 0, 1));
        return;
      }
      const { cx, cy, radius } = arcOf(from, to);
      const start = portable.atan2(from.y - cy, from.x - cx);
      const end = start + 4 * portable.atan(from.bulge);
      const [first, last] = start < end ? [start, end] : [end, start];
      const cuts = [first, last];
      // x turns back where the arc runs level: at ±π/2.
      for (let k = Math.ceil(first / Math.PI - 0.5); (k + 0.5) * Math.PI < last; k++) {
        if ((k + 0.5) * Math.PI > first) cuts.push((k + 0.5) * Math.PI);
      }
      cuts.sort((a, b) => a - b);
      // Neighbours meet in the very vertex: a level through it crosses one of them, not both or neither.
      const [atFirst, atLast] = start < end ? [from, to] : [to, from];
      const placeAt = (angle: number): Point => {
        if (angle === first) return atFirst;
        if (angle === last) return atLast;
        return { x: cx + radius * portable.cos(angle), y: cy + radius * portable.sin(angle) };
      };
      for (let i = 0; i + 1 < cuts.length; i++) {
        const [a, b] = [cuts[i] as number, cuts[i + 1] as number];
        const half = portable.cos((a + b) / 2) > 0 ? 1 : -1;
        const ends = [placeAt(a), placeAt(b)].sort((p, q) => p.y - q.y);
        const [low, high] = ends as [Point, Point];
        if (high.y > low.y) pieces.push(piece(low.y, high.y, low.x, high.x, radius, cx, cy, half));
      }
    });
  }
  return pieces;
}

function piece(
  lowY: number,
  highY: number,
  lowX: number,
  highX: number,
  radius: number,
  cx: number,
  cy: number,
  half: 1 | -1,
): SidePiece {
  const bulges = radius > 0 && lowY <= cy && highY >= cy;
  return {
    lowY,
    highY,
    lowX,
    highX,
    leastX: bulges && half < 0 ? cx - radius : Math.min(lowX, highX),
    greatestX: bulges && half > 0 ? cx + radius : Math.max(lowX, highX),
    radius,
    cx,
    cy,
    half,
  };
}

/** x of a piece at a height within it. */
export function xAt({ lowY, highY, lowX, highX, radius, cx, cy, half }: SidePiece, y: number): number {
  if (radius === 0) return lowX + ((highX - lowX) * (y - lowY)) / (highY - lowY);
  const up = y - cy;
  return cx + half * Math.sqrt(Math.max(0, (radius - up) * (radius + up)));
}
