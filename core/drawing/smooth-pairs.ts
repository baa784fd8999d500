import type { Chain, Point, Vertex } from '../geometry/contour';
import type { Strand } from './strand';

/**
 * Of the ends that meet at each junction the pair that runs on with the least change of direction, for the junctions
 * where this is plainest (all within a degree of the smoothest): what is decided there often settles the others.
 * End 2i is the start of strand i, 2i + 1 its end.
 */
export function smoothPairs(
  strands: readonly Strand[],
  junctions: readonly (readonly number[])[],
): readonly (readonly [number, number])[] {
  const best = junctions.map((ends) => smoothestPair(strands, ends));
  const least = Math.min(...best.map(({ deflection }) => deflection));
  return best.filter(({ deflection }) => deflection <= least + oneDegree).map(({ pair }) => pair);
}

const oneDegree = Math.PI / 180;

function smoothestPair(
  strands: readonly Strand[],
  ends: readonly number[],
): { pair: readonly [number, number]; deflection: number } {
  const ways = ends.map((end) => wayOut(strands, end));
  const angles = ways.map(({ x, y }) => Math.atan2(y, x));
  const order = [...ends.keys()].sort((a, b) => (angles[a] as number) - (angles[b] as number));
  let best: { pair: readonly [number, number]; deflection: number } = { pair: [0, 0], deflection: Infinity };
  for (let i = 0; i < ends.length; i++) {
    for (const j of facing(order, angles, i)) {
      const [a, b] = [ways[i] as Point, ways[j] as Point];
      const between = Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y));
      const deflection = Math.PI - between;
      // A hair's breadth of rounding must not decide between equals: the first pair stays.
      if (j !== i && (j > i || ends.length > few) && deflection < best.deflection - 2 ** -30)
        best = { pair: [ends[Math.min(i, j)] as number, ends[Math.max(i, j)] as number], deflection };
    }
  }
  return best;
}

/** The ends to compare one with: all of a few, of many those whose directions come nearest to the opposite one. */
function facing(order: readonly number[], angles: readonly number[], i: number): readonly number[] {
  if (order.length <= few) return [...angles.keys()];
  const opposite = (angles[i] as number) + ((angles[i] as number) > 0 ? -Math.PI : Math.PI);
  let low = 0;
  let high = order.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((angles[order[middle] as number] as number) < opposite) low = middle + 1;
    else high = middle;
  }
  const near: number[] = [];
  for (let k = low - 3; k < low + 3; k++) {
    const j = order[((k % order.length) + order.length) % order.length] as number;
    // Counted from either side: the loop looks at each pair once.
    if (j !== i) near.push(j);
  }
  return near;
}

const few = 32;

/** Direction in which a strand leaves one of its ends. */
export function wayOut(strands: readonly Strand[], end: number): Point {
  const { chain } = strands[end >> 1] as Strand;
  return (end & 1) === 0 ? wayAtStart(chain) : wayAtEnd(chain);
}

/** How a strand bends as it leaves one of its ends, 1/mm, counter-clockwise positive. */
export function curvatureOut(strands: readonly Strand[], end: number): number {
  const { chain } = strands[end >> 1] as Strand;
  const k = (end & 1) === 0 ? 0 : chain.length - 2;
  const [from, to] = [chain[k] as Vertex, chain[k + 1] as Vertex];
  // 2 sin(angle / 2) / chord with angle = 4 atan(bulge).
  const bend = (2 * Math.sin(2 * Math.atan(from.bulge))) / Math.hypot(to.x - from.x, to.y - from.y);
  return (end & 1) === 0 ? bend : -bend;
}

function wayAtStart(chain: Chain): Point {
  const [from, to] = [chain[0] as Vertex, chain[1] as Vertex];
  // The tangent at the start of an arc lies half its angle to the right of the chord: angle / 2 = 2 atan(bulge).
  return rotated(to.x - from.x, to.y - from.y, -2 * Math.atan(from.bulge));
}

function wayAtEnd(chain: Chain): Point {
  const [from, to] = [chain[chain.length - 2] as Vertex, chain[chain.length - 1] as Vertex];
  return rotated(from.x - to.x, from.y - to.y, 2 * Math.atan(from.bulge));
}

const rotated = (x: number, y: number, angle: number): Point => ({
  x: x * Math.cos(angle) - y * Math.sin(angle),
  y: x * Math.sin(angle) + y * Math.cos(angle),
});
