import type { Chain, Vertex } from '../geometry/contour';
import { reversedChain } from '../geometry/contour-measures';
import { comparePoints } from './compare-points';
import type { Ring } from './ring';
import { sortByPlace } from './sort-by-place';
import type { Strand } from './strand';

/**
 * The same strands in an order that depends on their geometry alone, not on their direction, so that a drawing gives
 * the same contours in whatever order and direction its entities were drawn.
 */
export function canonicalStrands(strands: readonly Strand[]): readonly Strand[] {
  const x = new Float64Array(strands.length);
  const y = new Float64Array(strands.length);
  strands.forEach(({ chain }, i) => {
    const [start, end] = [chain[0] as Vertex, chain[chain.length - 1] as Vertex];
    const first = comparePoints(start, end) <= 0 ? start : end;
    x[i] = first.x;
    y[i] = first.y;
  });
  const chainAt = (i: number): Chain => directed((strands[i] as Strand).chain);
  return Array.from(
    sortByPlace(x, y, (a, b) => compareChains(chainAt(a), chainAt(b))),
    (i) => strands[i] as Strand,
  );
}

/** Rings in an order that depends on their geometry alone. */
export function canonicalRings(rings: readonly Ring[]): readonly Ring[] {
  const x = Float64Array.from(rings, ({ contour }) => contour[0]?.x ?? 0);
  const y = Float64Array.from(rings, ({ contour }) => contour[0]?.y ?? 0);
  const contourAt = (i: number): Chain => (rings[i] as Ring).contour;
  return Array.from(
    sortByPlace(x, y, (a, b) => compareChains(contourAt(a), contourAt(b))),
    (i) => rings[i] as Ring,
  );
}

/** A chain from its lesser end; where both are one point, in the direction that compares as less. */
function directed(chain: Chain): Chain {
  const order = comparePoints(chain[0], chain[chain.length - 1]);
  if (order < 0) return chain;
  const turned = reversedChain(chain);
  return order > 0 || compareChains(turned, chain) < 0 ? turned : chain;
}

/** By start, then end, then the points between; of equals by bulge. */
export function compareChains(a: Chain, b: Chain): number {
  const ends = comparePoints(a[0], b[0]) || comparePoints(a[a.length - 1], b[b.length - 1]);
  if (ends !== 0) return ends;
  if (a.length !== b.length) return a.length - b.length;
  for (let i = 0; i < a.length; i++) {
    const [p, q] = [a[i] as Vertex, b[i] as Vertex];
    const order = comparePoints(p, q) || p.bulge - q.bulge;
    if (order !== 0) return order;
  }
  return 0;
}
