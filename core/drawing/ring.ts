import type { Box, Chain, Contour, Point, Vertex } from '../geometry/contour';
import { segmentLength } from '../geometry/contour-measures';
import { mergeArcs } from '../geometry/fit-merge';
import { tolerance } from '../geometry/tolerance';
import type { DirectedStrand } from './chain-strands';
import { ringShape } from './ring-shape';
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
  const facts = joinedStrands(directed);
  const { vertices: joined, shortest } = facts;
  const isPlain = !facts.isCut && (keepSteps || shortest > tolerance.tinyStep);
  const { vertices, steps } = isPlain
    ? { vertices: joined, steps: none }
    : cleaned(joined, directed, keepSteps);
  const whole = shortest > tolerance.samePoint ? vertices : withoutPoints(vertices);
  const { contour, area, box } = ringShape(whole);
  const strands = directed.map(({ strand }) => strand);
  const { gaps, length, fitError, isFitted } = facts;
  // Written out: to spread objects into one costs more than all of the above, and a drawing may have many rings.
  const layer = facts.layer ?? mainLayer(strands);
  return { contour, box, area, length, strands, layer, gaps, steps, fitError, isFitted };
}

const none: readonly Gap[] = [];

/** The ring of a closed strand, which most are: the same as ringOf gives, with nothing made that is not kept. */
export function ringOfClosed(strand: Strand, keepSteps = false): Ring {
  const { chain, layer, length, fitError, isFitted } = strand;
  let shortest = Infinity;
  for (let k = 0; k + 1 < chain.length; k++)
    shortest = Math.min(shortest, longerSide(chain[k] as Vertex, chain[k + 1] as Vertex));
  if (shortest <= tolerance.tinyStep) return ringOf([{ strand, forward: true }], keepSteps);
  const { contour, area, box } = ringShape(chain.slice(0, -1));
  return {
    contour,
    box,
    area,
    length,
    strands: [strand],
    layer,
    gaps: none,
    steps: none,
    fitError,
    isFitted,
  };
}

interface Joined extends Pick<Ring, 'gaps' | 'length' | 'fitError' | 'isFitted'> {
  readonly vertices: readonly Vertex[];
  /** The shortest chord, or what its longer side is: enough to tell whether any is tiny. */
  readonly shortest: number;
  readonly isCut: boolean;
  /** The layer of all strands; null where they differ. */
  readonly layer: string | null;
}

/** Head to tail, and all that is asked of the strands, in one go: a ring may have a hundred thousand. */
function joinedStrands(directed: readonly DirectedStrand[]): Joined {
  // Of its full length from the start: an array that grows keeps room for more.
  let count = 0;
  for (const { strand } of directed) count += strand.chain.length - 1;
  const vertices = new Array<Vertex>(count);
  let at = 0;
  let gaps: Gap[] | null = null;
  let [shortest, length, fitError] = [Infinity, 0, 0];
  let [isFitted, isCut] = [false, false];
  let layer = directed[0]?.strand.layer ?? null;
  let end = endOf(directed[directed.length - 1] as DirectedStrand);
  let last: Vertex | null = null;
  for (const run of directed) {
    const { strand } = run;
    const { chain } = strand;
    length += strand.length;
    if (strand.fitError > fitError) fitError = strand.fitError;
    if (strand.isFitted) isFitted = true;
    if (strand.cutFrom !== null) isCut = true;
    if (strand.layer !== layer) layer = null;
    for (let k = 0; k + 1 < chain.length; k++) {
      let vertex = vertexAt(chain, k, run.forward);
      if (k === 0 && (vertex.x !== end.x || vertex.y !== end.y)) {
        // Both ends move to the middle between them.
        const [dx, dy] = [vertex.x - end.x, vertex.y - end.y];
        const size = Math.sqrt(dx * dx + dy * dy);
        vertex = { x: (vertex.x + end.x) / 2, y: (vertex.y + end.y) / 2, bulge: vertex.bulge };
        if (size > tolerance.samePoint) (gaps ??= []).push({ at: { x: vertex.x, y: vertex.y }, size });
      }
      if (last) shortest = Math.min(shortest, longerSide(last, vertex));
      last = vertex;
      vertices[at++] = vertex;
    }
    end = endOf(run);
  }
  shortest = Math.min(shortest, longerSide(vertices[count - 1] as Vertex, vertices[0] as Vertex));
  return { vertices, gaps: gaps ?? none, shortest, length, fitError, isFitted, isCut, layer };
}

const longerSide = (a: Point, b: Point): number => Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y));

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
  return { ...ring, ...ringShape(withoutPoints(vertices)), length };
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
