import type { Chain, Point, Vertex } from '../geometry/contour';
import { segmentLength } from '../geometry/contour-measures';
import { fitArcs } from '../geometry/fit-arcs';
import { mergeArcs } from '../geometry/fit-merge';
import { tolerance } from '../geometry/tolerance';
import { ellipseCurve } from './ellipse-curve';
import type { ChainPart, Part, Piece } from './raw-drawing';
import { splineCurves } from './spline-curves';

/** One entity as a run of lines and arcs, mm. A closed one ends on its first point. */
export interface Strand {
  readonly layer: string;
  readonly colour: number;
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

/** How many arcs curves may still become; counted down. */
export interface FitBudget {
  arcs: number;
}

/**
 * The lines and arcs of a piece at a scale of `factor` mm per drawing unit; splines and ellipses become arcs within
 * the curve-fit tolerance. Segments without length are left out; an empty chain where nothing is left. Null where the
 * arcs left in `budget` do not suffice.
 */
export function strandOfPiece(piece: Piece, factor: number, budget: FitBudget): Strand | null {
  const { layer, colour, kind, closed, parts } = piece;
  const [only] = parts;
  const fitted = parts.length === 1 && only?.type === 'chain' ? null : fittedOnce(parts, factor, budget);
  if (budget.arcs < 0) return null;
  const { chain, fitError } = fitted ?? {
    chain: scaledChain((only as ChainPart).chain, factor),
    fitError: 0,
  };
  const { kept, length, zeroLength } = withoutZeroLength(chain);
  const ended = closed ? closedExactly(kept) : kept;
  const isFitted = fitted !== null && parts.some(({ type }) => type !== 'chain');
  return { layer, colour, kind, closed, chain: ended, length, fitError, isFitted, zeroLength, cutFrom: null };
}

/** The chain itself where all its segments have a length. */
function withoutZeroLength(chain: Chain): {
  readonly kept: Chain;
  readonly length: number;
  readonly zeroLength: readonly Point[];
} {
  let length = 0;
  let shortest = Infinity;
  for (let i = 0; i + 1 < chain.length; i++) {
    const [from, to] = [chain[i] as Vertex, chain[i + 1] as Vertex];
    const size = from.bulge === 0 ? chordOf(from, to) : segmentLength(from, to);
    length += size;
    if (size < shortest) shortest = size;
  }
  if (shortest > tolerance.zeroLength) return { kept: chain, length, zeroLength: none };
  const kept: Vertex[] = [];
  const zeroLength: Point[] = [];
  let end = chain[0] as Vertex;
  length = 0;
  for (let i = 0; i + 1 < chain.length; i++) {
    // The next segment starts where the last one with a length ended.
    const from = { x: end.x, y: end.y, bulge: (chain[i] as Vertex).bulge };
    const to = chain[i + 1] as Vertex;
    const size = segmentLength(from, to);
    if (size <= tolerance.zeroLength) zeroLength.push({ x: end.x, y: end.y });
    else {
      kept.push(from);
      length += size;
      end = to;
    }
  }
  if (kept.length > 0) kept.push({ x: end.x, y: end.y, bulge: 0 });
  return { kept, length, zeroLength };
}

const none: readonly Point[] = [];

/** Quicker than the general length, and most segments are lines. */
const chordOf = (from: Point, to: Point): number => {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return Math.sqrt(dx * dx + dy * dy);
};

interface Fitted {
  readonly chain: Chain;
  readonly fitError: number;
}

/** Fitting takes longer than all the rest, and outline, gaps and picture ask for the same curves. */
function fittedOnce(parts: readonly Part[], factor: number, budget: FitBudget): Fitted {
  const known = keptFits.get(parts);
  if (known?.factor === factor) {
    budget.arcs -= known.arcs;
    return known.fitted;
  }
  const before = budget.arcs;
  const fitted = fittedChain(parts, factor, budget);
  if (budget.arcs >= 0) keptFits.set(parts, { factor, arcs: before - budget.arcs, fitted });
  return fitted;
}

const keptFits = new WeakMap<readonly Part[], { factor: number; arcs: number; fitted: Fitted }>();

/** All parts one behind the other, curves as arcs. */
function fittedChain(parts: readonly Part[], factor: number, budget: FitBudget): Fitted {
  const joined: Vertex[] = [];
  let fitError = 0;
  for (const part of parts) {
    if (budget.arcs < 0) break;
    const { chain, error } =
      part.type === 'chain'
        ? { chain: scaledChain(part.chain, factor), error: 0 }
        : fittedCurve(part, factor, budget);
    fitError = Math.max(fitError, error);
    joined.pop();
    for (const vertex of chain) joined.push(vertex);
  }
  return { chain: joined, fitError };
}

function fittedCurve(
  part: Exclude<Part, ChainPart>,
  factor: number,
  budget: FitBudget,
): { readonly chain: Chain; readonly error: number } {
  const curves =
    part.type === 'ellipse'
      ? [ellipseCurve(scaledEllipse(part, factor))]
      : splineCurves(scaledSpline(part, factor));
  // A point of a spline costs the square of its degree: a cubic counts once.
  const effort = part.type === 'spline' ? Math.max(1, (part.degree + 1) ** 2 / 16) : 1;
  let error = 0;
  const joined: Vertex[] = [];
  for (const curve of curves) {
    if (budget.arcs < 0) break;
    const fit = fitArcs(curve, tolerance.curveFit, budget.arcs / effort);
    budget.arcs = fit.largestError === Infinity ? -1 : budget.arcs - fit.chain.length * effort;
    error = Math.max(error, fit.largestError);
    joined.pop();
    for (const vertex of fit.chain) joined.push(vertex);
  }
  const merged = mergeArcs(joined);
  return { chain: merged.chain, error: error + merged.largestShift };
}

const scaled = ({ x, y }: Point, factor: number): Point => ({ x: x * factor, y: y * factor });

const scaledChain = (chain: Chain, factor: number): Chain =>
  factor === 1 ? chain : chain.map(({ x, y, bulge }) => ({ x: x * factor, y: y * factor, bulge }));

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
function closedExactly(chain: Chain): Chain {
  const [first, last] = [chain[0], chain[chain.length - 1]];
  if (!first || !last || (first.x === last.x && first.y === last.y)) return chain;
  return [...chain.slice(0, -1), { x: first.x, y: first.y, bulge: 0 }];
}
