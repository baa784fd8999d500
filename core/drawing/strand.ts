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
  /** Where segments were left out because they have no length. */
  readonly zeroLength: readonly Point[];
  /** The strand it was cut from where another one ends on it; null where it is whole. */
  readonly cutFrom: Strand | null;
}

/**
 * The lines and arcs of a piece at a scale of `factor` mm per drawing unit; splines and ellipses become arcs within
 * the curve-fit tolerance. Segments without length are left out; an empty chain where nothing is left.
 */
export function strandOfPiece(piece: Piece, factor: number): Strand {
  const vertices: Vertex[] = [];
  const zeroLength: Point[] = [];
  let fitError = 0;
  let isFitted = false;
  let length = 0;
  let end: Point | null = null;
  const add = (from: Vertex, to: Point): void => {
    // The next segment starts where the last one with a length ended.
    const start: Vertex = end ? { x: end.x, y: end.y, bulge: from.bulge } : from;
    const size = segmentLength(start, to as Vertex);
    if (size <= tolerance.zeroLength) {
      zeroLength.push({ x: start.x, y: start.y });
      return;
    }
    vertices.push(start);
    length += size;
    end = to;
  };
  for (const part of piece.parts) {
    if (part.type === 'segment') {
      const { from, to, bulge } = scaledSegment(part, factor);
      add({ x: from.x, y: from.y, bulge }, to);
      continue;
    }
    isFitted = true;
    const { chain, error } = fittedChain(part, factor);
    fitError = Math.max(fitError, error);
    for (let i = 0; i + 1 < chain.length; i++) add(chain[i] as Vertex, chain[i + 1] as Vertex);
  }
  const last = end as Point | null;
  if (last && vertices.length > 0) vertices.push({ x: last.x, y: last.y, bulge: 0 });
  const { layer, kind, closed } = piece;
  const chain = closedExactly(vertices, closed);
  return { layer, kind, closed, chain, length, fitError, isFitted, zeroLength, cutFrom: null };
}

function fittedChain(
  part: Exclude<Part, SegmentPart>,
  factor: number,
): { readonly chain: Chain; readonly error: number } {
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

const scaledSegment = (part: SegmentPart, factor: number): SegmentPart =>
  factor === 1 ? part : { ...part, from: scaled(part.from, factor), to: scaled(part.to, factor) };

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
