import type { Chain, Vertex } from '../geometry/contour';
import { reversedChain } from '../geometry/contour-measures';
import type { Strand } from './strand';

/**
 * The same strands in an order and direction that depend on their geometry alone, so that a drawing gives the same
 * contours in whatever order and direction its entities were drawn.
 */
export function canonicalStrands(strands: readonly Strand[]): readonly Strand[] {
  return strands.map(directed).sort((a, b) => compareChains(a.chain, b.chain));
}

function directed(strand: Strand): Strand {
  const { chain } = strand;
  const order = comparePoints(chain[0], chain[chain.length - 1]);
  if (order < 0) return strand;
  const turned = reversedChain(chain);
  return order > 0 || compareChains(turned, chain) < 0 ? { ...strand, chain: turned } : strand;
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

export const comparePoints = (a: Vertex | undefined, b: Vertex | undefined): number =>
  a && b ? a.x - b.x || a.y - b.y : 0;
