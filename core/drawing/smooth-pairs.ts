import type { Chain, Point, Vertex } from '../geometry/contour';
import type { Strand } from './strand';
import * as portable from '../geometry/portable-math';

/**
 * Of the ends that meet at each junction the pair that runs on with the least change of direction, for the junctions
 * where this is plainest (all within a degree of the smoothest): what is decided there often settles the others.
 * End 2i is the start of strand i, 2i + 1 its end.
 */
export function smoothPairs(
  strands: readonly Strand[],
  junctions: readonly (readonly number[])[],
): readonly (readonly [number, number])[] {
  const crowds = junctions.filter((ends) => ends.length > few);
  const best = junctions.filter((ends) => ends.length <= few).map((ends) => smoothestPair(strands, ends));
  const least = best.reduce((smallest, { deflection }) => Math.min(smallest, deflection), Infinity);
  return [
    ...best.filter(({ deflection }) => deflection <= least + oneDegree).map(({ pair }) => pair),
    ...crowds.flatMap((ends) => oppositePairs(strands, ends)),
  ];
}

const oneDegree = Math.PI / 180;

/** Where more ends meet than this, no outline runs through: who faces whom is settled for all of them at once. */
const few = 32;

function smoothestPair(
  strands: readonly Strand[],
  ends: readonly number[],
): { pair: readonly [number, number]; deflection: number } {
  const ways = ends.map((end) => wayOut(strands, end));
  let best: { pair: readonly [number, number]; deflection: number } = { pair: [0, 0], deflection: Infinity };
  for (let i = 0; i < ends.length; i++) {
    for (let j = i + 1; j < ends.length; j++) {
      const [a, b] = [ways[i] as Point, ways[j] as Point];
      const between = Math.abs(portable.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y));
      const deflection = Math.PI - between;
      // A hair's breadth of rounding must not decide between equals: the first pair stays.
      if (deflection < best.deflection - 2 ** -30)
        best = { pair: [ends[i] as number, ends[j] as number], deflection };
    }
  }
  return best;
}

/** Each end with the one half-way round. */
function oppositePairs(strands: readonly Strand[], ends: readonly number[]): [number, number][] {
  const sorted = ends
    .map((end) => ({ end, way: wayOut(strands, end) }))
    .map(({ end, way }) => ({ end, angle: portable.atan2(way.y, way.x) }))
    .sort((a, b) => a.angle - b.angle || a.end - b.end);
  const half = sorted.length >> 1;
  return sorted
    .slice(0, half)
    .map(({ end }, k): [number, number] => [end, (sorted[k + half] as { end: number }).end]);
}

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
  const bend = (2 * portable.sin(2 * portable.atan(from.bulge))) / Math.hypot(to.x - from.x, to.y - from.y);
  return (end & 1) === 0 ? bend : -bend;
}

function wayAtStart(chain: Chain): Point {
  const [from, to] = [chain[0] as Vertex, chain[1] as Vertex];
  // The tangent at the start of an arc lies half its angle to the right of the chord: angle / 2 = 2 atan(bulge).
  return rotated(to.x - from.x, to.y - from.y, -2 * portable.atan(from.bulge));
}

function wayAtEnd(chain: Chain): Point {
  const [from, to] = [chain[chain.length - 2] as Vertex, chain[chain.length - 1] as Vertex];
  return rotated(from.x - to.x, from.y - to.y, 2 * portable.atan(from.bulge));
}

const rotated = (x: number, y: number, angle: number): Point => ({
  x: x * portable.cos(angle) - y * portable.sin(angle),
  y: x * portable.sin(angle) + y * portable.cos(angle),
});
