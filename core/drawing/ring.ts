import type { Box, Chain, Contour, Point, Vertex } from '../geometry/contour';
import { contourArea, reversedContour, segmentLength } from '../geometry/contour-measures';
import { mergeArcs } from '../geometry/fit-merge';
import { tolerance } from '../geometry/tolerance';
import { comparePoints } from './compare-points';
import type { DirectedStrand } from './chain-strands';
import { ringBox } from './chain-box';
import type { Strand } from './strand';

/** A closed run of strands as a contour, counter-clockwise, beginning at its leftmost (then lowest) vertex. */
export interface Ring {
  readonly contour: Contour;
  readonly box: Box;
  /** Enclosed area, mm²; positive. */
  readonly area: number;
  readonly length: number;
  readonly strands: readonly Strand[];
  /** The layer that most of its length lies on. */
  readonly layer: string;
  readonly gaps: readonly Gap[];
  /** Steps too small to be meant, taken out: both their ends moved to the middle between them. */
  readonly steps: readonly Gap[];
  readonly fitError: number;
  /** Whether a spline or ellipse is in it. */
  readonly isFitted: boolean;
}

/** Two ends that were brought together: both moved to the middle between them. */
export interface Gap {
  readonly at: Point;
  readonly size: number;
}

/** Joins directed strands head to tail, the last to the first. Tiny steps are taken out unless they are to be kept. */
export function ringOf(directed: readonly DirectedStrand[], keepSteps = false): Ring {
  const { joined, gaps, shortest } = joinedVertices(directed);
  const strands = directed.map(({ strand }) => strand);
  let [length, fitError] = [0, 0];
  let isFitted = false;
  let isCut = false;
  for (const strand of strands) {
    length += strand.length;
    if (strand.fitError > fitError) fitError = strand.fitError;
    if (strand.isFitted) isFitted = true;
    if (strand.cutFrom !== null) isCut = true;
  }
  const isPlain = !isCut && (keepSteps || shortest > tolerance.tinyStep);
  const { vertices, steps } = isPlain
    ? { vertices: joined, steps: none }
    : cleaned(joined, directed, keepSteps);
  const whole = shortest > tolerance.samePoint ? vertices : withoutPoints(vertices);
  return { ...shapeOf(whole), length, strands, layer: mainLayer(strands), gaps, steps, fitError, isFitted };
}

const none: readonly Gap[] = [];

/** Head to tail; where the ends are apart, both at the middle between them, and the gap in the list. */
function joinedVertices(directed: readonly DirectedStrand[]): {
  readonly joined: readonly Vertex[];
  readonly gaps: readonly Gap[];
  /** The shortest chord, or what its longer side is: enough to tell whether any is tiny. */
  readonly shortest: number;
} {
  const joined: Vertex[] = [];
  let gaps: Gap[] | null = null;
  let shortest = Infinity;
  let last: Vertex | null = null;
  const push = (vertex: Vertex): void => {
    if (last)
      shortest = Math.min(shortest, Math.max(Math.abs(vertex.x - last.x), Math.abs(vertex.y - last.y)));
    last = vertex;
    joined.push(vertex);
  };
  let end = endOf(directed[directed.length - 1] as DirectedStrand);
  for (const run of directed) {
    const { chain } = run.strand;
    const start = vertexAt(chain, 0, run.forward);
    const size = Math.hypot(start.x - end.x, start.y - end.y);
    if (size === 0) push(start);
    else {
      const at = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
      if (size > tolerance.samePoint) (gaps ??= []).push({ at, size });
      push({ x: at.x, y: at.y, bulge: start.bulge });
    }
    for (let k = 1; k + 1 < chain.length; k++) push(vertexAt(chain, k, run.forward));
    end = endOf(run);
  }
  const [first, final] = [joined[0] as Vertex, joined[joined.length - 1] as Vertex];
  shortest = Math.min(shortest, Math.max(Math.abs(final.x - first.x), Math.abs(final.y - first.y)));
  return { joined, gaps: gaps ?? none, shortest };
}

/** Vertex k of a chain run forward or backward; the same object where nothing about it changes. */
function vertexAt(chain: Chain, k: number, forward: boolean): Vertex {
  if (forward) return chain[k] as Vertex;
  const vertex = chain[chain.length - 1 - k] as Vertex;
  const bulge = -(chain[chain.length - 2 - k] as Vertex).bulge;
  return bulge === 0 && vertex.bulge === 0
    ? vertex
    : { x: vertex.x, y: vertex.y, bulge: bulge === 0 ? 0 : bulge };
}

const endOf = ({ strand, forward }: DirectedStrand): Vertex =>
  strand.chain[forward ? strand.chain.length - 1 : 0] as Vertex;

/** Without tiny steps (unless they are kept) and without the places where one strand was cut and goes on. */
function cleaned(
  vertices: readonly Vertex[],
  directed: readonly DirectedStrand[],
  keepSteps: boolean,
): { readonly vertices: readonly Vertex[]; readonly steps: readonly Gap[] } {
  const corners: Corner[] = [];
  directed.forEach(({ strand }, i) => {
    const before = directed[(i + directed.length - 1) % directed.length]?.strand.cutFrom ?? null;
    for (let k = 0; k + 1 < strand.chain.length; k++) {
      const isCut = k === 0 && (strand.cutFrom !== null || before !== null);
      corners.push({ vertex: vertices[corners.length] as Vertex, isFitted: strand.isFitted, isCut });
    }
  });
  const kept = keepSteps ? { vertices, steps: none } : withoutSteps(corners);
  return { vertices: rejoined(kept.vertices, corners), steps: kept.steps };
}

/** The same ring along another contour: a part of it. */
export function ringAlong(ring: Ring, vertices: readonly Vertex[], length: number): Ring {
  return { ...ring, ...shapeOf(withoutPoints(vertices)), length };
}

interface Corner {
  readonly vertex: Vertex;
  /** Whether the segment that leaves it belongs to a curve that became arcs: however short, it is meant. */
  readonly isFitted: boolean;
  /** Whether a strand was cut here: no corner where the edge runs straight on. */
  readonly isCut: boolean;
}

/** A step counts as a slip where both its neighbours are this many times longer: short pieces in a row draw a curve. */
const farLonger = 10;

function withoutSteps(corners: readonly Corner[]): { vertices: readonly Vertex[]; steps: readonly Gap[] } {
  const at = (i: number): Corner => corners[(i + corners.length) % corners.length] as Corner;
  const chord = (i: number): number => {
    const [a, b] = [at(i).vertex, at(i + 1).vertex];
    return Math.hypot(b.x - a.x, b.y - a.y);
  };
  const steps: Gap[] = [];
  const moved = new Map<number, Vertex | null>();
  for (let i = 0; i < corners.length && corners.length > 4; i++) {
    const size = chord(i);
    if (size > tolerance.tinyStep || at(i).isFitted || size <= tolerance.samePoint) continue;
    if (chord(i - 1) < farLonger * size || chord(i + 1) < farLonger * size) continue;
    const [a, b] = [at(i).vertex, at(i + 1).vertex];
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    steps.push({ at: middle, size });
    moved.set(i, null);
    moved.set((i + 1) % corners.length, { ...middle, bulge: b.bulge });
  }
  if (steps.length === 0) return { vertices: corners.map(({ vertex }) => vertex), steps };
  const vertices = corners.flatMap(({ vertex }, i) => {
    const to = moved.get(i);
    return to === undefined ? [vertex] : to === null ? [] : [to];
  });
  return { vertices, steps };
}

/** Without the places where a strand was cut and the edge runs straight on. */
function rejoined(vertices: readonly Vertex[], corners: readonly Corner[]): readonly Vertex[] {
  const cuts = new Set(corners.filter(({ isCut }) => isCut).map(({ vertex }) => vertex));
  if (cuts.size === 0) return vertices;
  const out: Vertex[] = [];
  vertices.forEach((vertex, i) => {
    const before = out[out.length - 1];
    const next = vertices[(i + 1) % vertices.length] as Vertex;
    const merged = before && cuts.has(vertex) ? mergeArcs([before, vertex, { ...next, bulge: 0 }]).chain : [];
    if (merged.length === 2) out[out.length - 1] = merged[0] as Vertex;
    else out.push(vertex);
  });
  return out;
}

/** The longest part's layer; of equals the first by name. */
function mainLayer(strands: readonly Strand[]): string {
  const first = strands[0]?.layer ?? '0';
  if (strands.every(({ layer }) => layer === first)) return first;
  const lengths = new Map<string, number>();
  for (const { layer, length } of strands) lengths.set(layer, (lengths.get(layer) ?? 0) + length);
  const sorted = [...lengths].sort(([a, p], [b, q]) => q - p || (a < b ? -1 : 1));
  return sorted[0]?.[0] ?? '0';
}

/** Without segments that closing a gap left without length. */
const withoutPoints = (vertices: readonly Vertex[]): readonly Vertex[] =>
  vertices.filter((from, i) => {
    const to = vertices[i + 1 === vertices.length ? 0 : i + 1] as Vertex;
    return segmentLength(from, to) > tolerance.samePoint;
  });

/** The contour of vertices: counter-clockwise, from the leftmost (then lowest) vertex on. */
function shapeOf(vertices: readonly Vertex[]): Pick<Ring, 'contour' | 'area' | 'box'> {
  const area = contourArea(vertices);
  const turned = area < 0 ? reversedContour(vertices) : vertices;
  let first = 0;
  turned.forEach((vertex, i) => {
    if (comparePoints(vertex, turned[first]) < 0) first = i;
  });
  const contour = first === 0 ? turned : [...turned.slice(first), ...turned.slice(0, first)];
  return { contour, area: Math.abs(area), box: ringBox(contour) };
}
