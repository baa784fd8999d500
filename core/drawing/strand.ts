import type { Chain, Point, Vertex } from '../geometry/contour';
import { segmentLength } from '../geometry/contour-measures';
import { fitArcs } from '../geometry/fit-arcs';
import { mergeArcs } from '../geometry/fit-merge';
import { tolerance } from '../geometry/tolerance';
import { ellipseCurve } from './ellipse-curve';
import type { Part, Piece, SegmentPart } from './raw-drawing';
import { splineCurves } from './spline-curves';

/** One entity as a run of lines and arcs, mm. A closed one ends on its first point. */
export interface Strand {
  readonly layer: string;
  readonly kind: string;
  readonly closed: boolean;
  readonly chain: Chain;
  readonly length: number;
  /** Largest distance of a spline or ellipse in it from its arcs; 0 where there is none. */
  readonly fitError: number;
  /** Whether a spline or ellipse is in it. */
  readonly isFitted: boolean;
  /** Segments left out because they have no length. */
  readonly zeroLength: number;
}

/**
 * The lines and arcs of a piece at a scale of `factor` mm per drawing unit; splines and ellipses become arcs within
 * the curve-fit tolerance. Segments without length are left out and counted; an empty chain where nothing is left.
 */
export function strandOfPiece(piece: Piece, factor: number): Strand {
  const vertices: Vertex[] = [];
  let fitError = 0;
  let zeroLength = 0;
  let end: Point | null = null;
  const add = (from: Vertex, to: Point): void => {
    // The next segment starts where the last one with a length ended.
    const start = end ? { ...end, bulge: from.bulge } : from;
    if (segmentLength(start, { ...to, bulge: 0 }) <= tolerance.zeroLength) {
      zeroLength++;
      return;
    }
    vertices.push(start);
    end = { x: to.x, y: to.y };
  };
  for (const part of piece.parts) {
    const { chain, error } = chainOfPart(part, factor);
    fitError = Math.max(fitError, error);
    chain.slice(0, -1).forEach((from, i) => add(from, chain[i + 1] as Vertex));
  }
  const last = end as Point | null;
  if (last && vertices.length > 0) vertices.push({ ...last, bulge: 0 });
  const isFitted = piece.parts.some((part) => part.type !== 'segment');
  const chain = closedExactly(vertices, piece.closed);
  const length = chain
    .slice(0, -1)
    .reduce((sum, from, i) => sum + segmentLength(from, chain[i + 1] as Vertex), 0);
  return {
    layer: piece.layer,
    kind: piece.kind,
    closed: piece.closed,
    chain,
    length,
    fitError,
    isFitted,
    zeroLength,
  };
}

function chainOfPart(part: Part, factor: number): { chain: Chain; error: number } {
  if (part.type === 'segment') return { chain: segmentChain(part, factor), error: 0 };
  const curves =
    part.type === 'ellipse'
      ? [ellipseCurve(scaledEllipse(part, factor))]
      : splineCurves(scaledSpline(part, factor));
  let error = 0;
  const joined: Vertex[] = [];
  for (const curve of curves) {
    const fit = fitArcs(curve, tolerance.curveFit);
    error = Math.max(error, fit.largestError);
    joined.pop();
    joined.push(...fit.chain);
  }
  const merged = mergeArcs(joined);
  return { chain: merged.chain, error: error + merged.largestShift };
}

const segmentChain = ({ from, to, bulge }: SegmentPart, factor: number): Chain => [
  { ...scaled(from, factor), bulge },
  { ...scaled(to, factor), bulge: 0 },
];

const scaled = ({ x, y }: Point, factor: number): Point => ({ x: x * factor, y: y * factor });

const scaledEllipse = <T extends { centre: Point; u: Point; v: Point }>(part: T, factor: number): T => ({
  ...part,
  centre: scaled(part.centre, factor),
  u: scaled(part.u, factor),
  v: scaled(part.v, factor),
});

const scaledSpline = <T extends { points: readonly Point[] }>(part: T, factor: number): T => ({
  ...part,
  points: part.points.map((point) => scaled(point, factor)),
});

/** A closed strand ends on the very point it begins with, whatever rounding made of it. */
function closedExactly(vertices: readonly Vertex[], closed: boolean): Chain {
  const first = vertices[0];
  if (!closed || !first || vertices.length < 2) return vertices;
  return [...vertices.slice(0, -1), { x: first.x, y: first.y, bulge: 0 }];
}
