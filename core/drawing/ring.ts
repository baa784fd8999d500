import type { Chain, Contour, Point, Vertex } from '../geometry/contour';
import { contourArea, reversedChain, reversedContour, segmentLength } from '../geometry/contour-measures';
import { mergeArcs } from '../geometry/fit-merge';
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
  /** Steps too small to be meant, taken out: both their ends moved to the middle between them. */
  readonly steps: readonly Gap[];
  readonly fitError: number;
}

/** Two ends that were brought together: both moved to the middle between them. */
export interface Gap {
  readonly at: Point;
  readonly size: number;
}

/** Joins directed strands head to tail, the last to the first. Tiny steps are taken out unless they are to be kept. */
export function ringOf(directed: readonly DirectedStrand[], keepSteps = false): Ring {
  const chains = directed.map(({ strand, forward }) =>
    forward ? strand.chain : reversedChain(strand.chain),
  );
  const gaps: Gap[] = [];
  const corners: Corner[] = [];
  chains.forEach((chain, i) => {
    const before = (i + chains.length - 1) % chains.length;
    const { strand } = directed[i] as DirectedStrand;
    const end = (chains[before] as Chain)[(chains[before] as Chain).length - 1] as Vertex;
    const start = chain[0] as Vertex;
    const size = Math.hypot(start.x - end.x, start.y - end.y);
    const at = size === 0 ? start : { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
    if (size > tolerance.samePoint) gaps.push({ at: { x: at.x, y: at.y }, size });
    const source = strand.cutFrom;
    const isCut = source !== null && source === directed[before]?.strand.cutFrom;
    corners.push({ vertex: { x: at.x, y: at.y, bulge: start.bulge }, isFitted: strand.isFitted, isCut });
    for (let k = 1; k + 1 < chain.length; k++)
      corners.push({ vertex: chain[k] as Vertex, isFitted: strand.isFitted, isCut: false });
  });
  const { vertices, steps } = keepSteps
    ? { vertices: corners.map(({ vertex }) => vertex), steps: [] }
    : withoutSteps(corners);
  const contour = normalContour(rejoined(vertices, corners));
  const strands = directed.map(({ strand }) => strand);
  return {
    contour,
    area: contourArea(contour),
    length: strands.reduce((sum, { length }) => sum + length, 0),
    strands,
    layer: mainLayer(strands),
    gaps,
    steps,
    fitError: strands.reduce((most, { fitError }) => Math.max(most, fitError), 0),
  };
}

/** The same ring along another contour: a part of it. */
export function ringAlong(ring: Ring, vertices: readonly Vertex[], length: number): Ring {
  const contour = normalContour(vertices);
  return { ...ring, contour, area: contourArea(contour), length };
}

interface Corner {
  readonly vertex: Vertex;
  /** Whether the segment that leaves it belongs to a curve that became arcs: however short, it is meant. */
  readonly isFitted: boolean;
  /** Whether one strand was cut here and goes on: no corner at all. */
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

/** Without the places where one strand was cut and goes on. */
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
