import type { Chain, Point, Vertex } from '../geometry/contour';
import { contourArea, reversedChain } from '../geometry/contour-measures';
import type { DirectedStrand } from './chain-strands';
import { groupBy } from './group-by';
import { curvatureOut, wayOut } from './smooth-pairs';
import type { Strand } from './strand';
import * as portable from '../geometry/portable-math';

export interface Faces {
  readonly rings: readonly (readonly DirectedStrand[])[];
  /** Strands that two of the rings have in common. */
  readonly shared: readonly Strand[];
  /** Strands in none of the rings: they divide a face, or lead nowhere. */
  readonly left: readonly Strand[];
}

/**
 * The areas that hang together along edges, each as a ring of its own. An edge between two of them must have been drawn
 * for both (`isDoubled`); one drawn once divides an outline (a bend line, say) and gives way. `nodes` tells which ends
 * meet: end 2i is the start of strand i, 2i + 1 its end.
 */
export function faceRings(
  strands: readonly Strand[],
  nodes: readonly number[],
  isDoubled: (strand: Strand) => boolean,
): Faces {
  let alive = new Set(strands.keys());
  for (let round = 0; ; round++) {
    alive = withoutDeadEnds(alive, nodes);
    const faces = tracedFaces(strands, nodes, alive);
    const faceAt = new Map<number, number>();
    faces.forEach((face, f) => face.forEach((end) => faceAt.set(end, f)));
    const isRing = faces.map((face) => areaOf(strands, face) > 0);
    const inner = [...alive].filter((i) => {
      const [a, b] = [faceAt.get(2 * i) as number, faceAt.get(2 * i + 1) as number];
      return a === b || ((isRing[a] ?? false) && (isRing[b] ?? false));
    });
    const dividing = inner.filter(
      (i) => faceAt.get(2 * i) === faceAt.get(2 * i + 1) || !isDoubled(strands[i] as Strand),
    );
    if (round === mostRounds) return { rings: [], shared: [], left: strands };
    if (dividing.length === 0) {
      return {
        rings: faces.filter((_, f) => isRing[f]).map((face) => face.map((end) => directed(strands, end))),
        shared: inner.map((i) => strands[i] as Strand),
        left: [...strands.keys()].filter((i) => !alive.has(i)).map((i) => strands[i] as Strand),
      };
    }
    for (const i of dividing) alive.delete(i);
  }
}

/** Dividing lines go in one or two rounds; what has not settled by then is no drawing of outlines. */
const mostRounds = 20;

const directed = (strands: readonly Strand[], end: number): DirectedStrand => ({
  strand: strands[end >> 1] as Strand,
  forward: (end & 1) === 0,
});

function withoutDeadEnds(alive: ReadonlySet<number>, nodes: readonly number[]): Set<number> {
  const left = new Set(alive);
  const ends = [...left].flatMap((i) => [2 * i, 2 * i + 1]);
  const byNode = groupBy(ends, (end) => nodes[end] as number);
  const degree = new Map([...byNode].map(([node, all]) => [node, all.length]));
  const queue = ends.filter((end) => degree.get(nodes[end] as number) === 1);
  for (let end = queue.pop(); end !== undefined; end = queue.pop()) {
    if (!left.delete(end >> 1)) continue;
    for (const side of [end, end ^ 1]) {
      const node = nodes[side] as number;
      const count = (degree.get(node) ?? 0) - 1;
      degree.set(node, count);
      if (count === 1) queue.push(...(byNode.get(node) ?? []).filter((other) => left.has(other >> 1)));
    }
  }
  return left;
}

/** Every face as the ends by which its strands are entered, the face on the left hand. */
function tracedFaces(
  strands: readonly Strand[],
  nodes: readonly number[],
  alive: ReadonlySet<number>,
): number[][] {
  const ends = [...alive].flatMap((i) => [2 * i, 2 * i + 1]);
  const next = new Map<number, number>();
  for (const around of groupBy(ends, (end) => nodes[end] as number).values()) {
    const sorted = around.map((end) => ({
      end,
      angle: angleOf(strands, end),
      bend: curvatureOut(strands, end),
    }));
    sorted.sort((a, b) => (Math.abs(a.angle - b.angle) > sameAngle ? a.angle - b.angle : a.bend - b.bend));
    // Who arrives by an end leaves by its neighbour clockwise.
    sorted.forEach(({ end }, k) =>
      next.set(end ^ 1, (sorted[(k + sorted.length - 1) % sorted.length] as { end: number }).end),
    );
  }
  const seen = new Set<number>();
  const faces: number[][] = [];
  for (const start of ends) {
    if (seen.has(start)) continue;
    const face: number[] = [];
    for (let end = start; !seen.has(end); end = next.get(end) as number) {
      seen.add(end);
      face.push(end);
    }
    faces.push(face);
  }
  return faces;
}

/** Two curves that leave a place in directions nearer than this are told apart by how they bend. */
const sameAngle = 2 ** -20;

function angleOf(strands: readonly Strand[], end: number): number {
  const { x, y } = wayOut(strands, end);
  return portable.atan2(y, x);
}

function areaOf(strands: readonly Strand[], face: readonly number[]): number {
  const vertices = face.flatMap((end): readonly Vertex[] => {
    const { chain } = strands[end >> 1] as Strand;
    const run: Chain = (end & 1) === 0 ? chain : reversedChain(chain);
    return run.slice(0, -1);
  });
  return contourArea(vertices);
}

/** The middle of a strand, where it is shown. */
export function middleOf({ chain }: { readonly chain: Chain }): Point {
  const at = chain[(chain.length - 1) >> 1] as Vertex;
  const to = chain[((chain.length - 1) >> 1) + 1] ?? at;
  return chain.length === 2 ? { x: (at.x + to.x) / 2, y: (at.y + to.y) / 2 } : { x: at.x, y: at.y };
}
