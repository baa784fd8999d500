import type { Chain, Contour, Point, Vertex } from '../geometry/contour';
import { contourArea, reversedChain, reversedContour, segmentLength } from '../geometry/contour-measures';
import { tolerance } from '../geometry/tolerance';
import { comparePoints } from './canonical-strands';
import type { DirectedStrand } from './chain-strands';
import type { Strand } from './strand';

/** A closed run of strands as a contour, counter-clockwise, beginning at its leftmost (then lowest) vertex. */
export interface Ring {
  readonly contour: Contour;
  /** Enclosed area, mm²; positive. */
  readonly area: number;
  readonly length: number;
  readonly strands: readonly Strand[];
  /** The layer that most of its length lies on. */
  readonly layer: string;
  readonly gaps: readonly Gap[];
  readonly fitError: number;
}

/** Two ends that were brought together: both moved to the middle between them. */
export interface Gap {
  readonly at: Point;
  readonly size: number;
}

/** Joins directed strands head to tail, the last to the first. */
export function ringOf(directed: readonly DirectedStrand[]): Ring {
  const chains = directed.map(({ strand, forward }) =>
    forward ? strand.chain : reversedChain(strand.chain),
  );
  const gaps: Gap[] = [];
  const vertices: Vertex[] = [];
  chains.forEach((chain, i) => {
    const before = chains[(i + chains.length - 1) % chains.length] as Chain;
    const end = before[before.length - 1] as Vertex;
    const start = chain[0] as Vertex;
    const size = Math.hypot(start.x - end.x, start.y - end.y);
    const at = size === 0 ? start : { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
    if (size > tolerance.samePoint) gaps.push({ at: { x: at.x, y: at.y }, size });
    vertices.push({ x: at.x, y: at.y, bulge: start.bulge }, ...chain.slice(1, -1));
  });
  const contour = normalContour(vertices);
  const strands = directed.map(({ strand }) => strand);
  return {
    contour,
    area: contourArea(contour),
    length: strands.reduce((sum, { length }) => sum + length, 0),
    strands,
    layer: mainLayer(strands),
    gaps,
    fitError: Math.max(...strands.map(({ fitError }) => fitError)),
  };
}

/** The longest part's layer; of equals the first by name. */
function mainLayer(strands: readonly Strand[]): string {
  const lengths = new Map<string, number>();
  for (const { layer, length } of strands) lengths.set(layer, (lengths.get(layer) ?? 0) + length);
  const sorted = [...lengths].sort(([a, p], [b, q]) => q - p || (a < b ? -1 : 1));
  return sorted[0]?.[0] ?? '0';
}

/** Counter-clockwise, without segments that closing a gap left without length, from the leftmost vertex on. */
function normalContour(vertices: readonly Vertex[]): Contour {
  const whole = vertices.filter((from, i) => {
    const to = vertices[(i + 1) % vertices.length] as Vertex;
    return segmentLength(from, to) > tolerance.samePoint;
  });
  const contour = contourArea(whole) < 0 ? reversedContour(whole) : whole;
  let first = 0;
  contour.forEach((vertex, i) => {
    if (comparePoints(vertex, contour[first]) < 0) first = i;
  });
  return [...contour.slice(first), ...contour.slice(0, first)];
}
