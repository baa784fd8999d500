import Flatbush from 'flatbush';
import type { Point, Vertex } from '../geometry/contour';
import type { Strand } from './strand';

export interface EndGap {
  readonly at: Point;
  /** To the nearest end of another strand (or the other end of its own), mm; Infinity where none is within reach. */
  readonly gap: number;
}

/** Each end of each strand with the distance to the nearest other one. */
export function nearestEnds(strands: readonly Strand[], reach: number): readonly EndGap[] {
  if (strands.length === 0) return [];
  const index = new Flatbush(2 * strands.length);
  const ends = strands.flatMap(({ chain }) => [chain[0], chain[chain.length - 1]] as readonly Vertex[]);
  for (const { x, y } of ends) index.add(x, y, x, y);
  index.finish();
  return ends.map(({ x, y }, end) => {
    const [other] = index.neighbors(x, y, 1, reach, (i) => i !== end && mayMeet(strands, ends, end, i));
    const found = other === undefined ? undefined : ends[other];
    return { at: { x, y }, gap: found ? Math.hypot(found.x - x, found.y - y) : Infinity };
  });
}

/** A strand meets itself only if it is clearly longer than the gap between its ends. */
function mayMeet(strands: readonly Strand[], ends: readonly Vertex[], a: number, b: number): boolean {
  if (a >> 1 !== b >> 1) return true;
  const [p, q] = [ends[a] as Vertex, ends[b] as Vertex];
  return (strands[a >> 1] as Strand).length > 4 * Math.hypot(p.x - q.x, p.y - q.y);
}
