import type { Chain, Vertex } from '../geometry/contour';
import { reversedChain } from '../geometry/contour-measures';
import { chainBox } from './chain-box';
import { comparePoints } from './compare-points';
import { distinctList, listed, sortedList, type Distinct, type Listed } from './listed';
import { openedRing } from './lies-on';
import type { Ring } from './ring';
import type { Strand } from './strand';

/**
 * Strands in an order that depends on their geometry alone, not on their direction, so that a drawing gives the same
 * contours in whatever order and direction its entities were drawn.
 */
export function canonicalStrands(strands: readonly Strand[]): Listed<Strand> {
  const list = listed(strands, ({ chain, length }) => ({
    start: chain[0] as Vertex,
    end: chain[chain.length - 1] as Vertex,
    box: chainBox(chain),
    length,
  }));
  return sortedList(list, (a, b) => compareChains(directed(a.chain), directed(b.chain)));
}

/** Strands without those drawn twice. */
export const distinctStrands = (strands: Listed<Strand>): Distinct<Strand> =>
  distinctList(strands, ({ chain }) => chain);

/** Rings in an order that depends on their geometry alone. */
export function canonicalRings(rings: readonly Ring[]): Listed<Ring> {
  const list = listed(rings, ({ contour, box, length }) => {
    const start = contour[0] as Vertex;
    return { start, end: start, box, length };
  });
  return sortedList(list, (a, b) => compareChains(a.contour, b.contour));
}

/** Rings without those drawn twice. */
export const distinctRings = (rings: Listed<Ring>): Distinct<Ring> =>
  distinctList(rings, ({ contour }) => openedRing(contour));

/** A chain from its lesser end; where both are one point, in the direction that compares as less. */
function directed(chain: Chain): Chain {
  const order = comparePoints(chain[0], chain[chain.length - 1]);
  if (order < 0) return chain;
  const turned = reversedChain(chain);
  return order > 0 || compareChains(turned, chain) < 0 ? turned : chain;
}

/** By start, then end, then the points between; of equals by bulge. */
function compareChains(a: Chain, b: Chain): number {
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
