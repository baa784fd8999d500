import Flatbush from 'flatbush';
import type { Point } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import type { Strand } from './strand';

/**
 * Which ends of strands meet. End 2i is the start of strand i, end 2i + 1 its end; ends with the same node meet.
 *
 * Ends on the same point always meet. After that only ends that are still alone are joined, nearest pair first, as
 * long as they are within the gap: so a piece shorter than the gap keeps its two ends apart, and no cluster grows by
 * hops. Last, an end still alone takes the nearest node within the gap (a branch).
 */
export function joinEnds(strands: readonly Strand[], gap: number): Int32Array {
  const points = strands.flatMap(({ chain }) => [chain[0], chain[chain.length - 1]] as readonly Point[]);
  const nodes = new NodeSet(points.length);
  if (points.length === 0) return nodes.labels();
  const index = new Flatbush(points.length);
  for (const { x, y } of points) index.add(x, y, x, y);
  index.finish();
  const at = (end: number): Point => points[end] as Point;
  const distance = (a: number, b: number): number => Math.hypot(at(a).x - at(b).x, at(a).y - at(b).y);
  // A strand may close on itself only if it is clearly longer than the gap it closes.
  const mayMeet = (a: number, b: number): boolean =>
    a >> 1 !== b >> 1 || (strands[a >> 1] as Strand).length > 4 * distance(a, b);
  const within = (end: number, reach: number): number[] =>
    index
      .search(at(end).x - reach, at(end).y - reach, at(end).x + reach, at(end).y + reach)
      .filter((other) => other !== end && distance(end, other) <= reach && mayMeet(end, other));

  for (let end = 0; end < points.length; end++) {
    for (const other of within(end, tolerance.samePoint)) nodes.unite(end, other);
  }
  const isAlone = (end: number): boolean => nodes.size(end) === 1;
  const pairs: { a: number; b: number; apart: number }[] = [];
  for (let end = 0; end < points.length; end++) {
    if (!isAlone(end)) continue;
    for (const other of within(end, gap)) {
      if (other > end && isAlone(other)) pairs.push({ a: end, b: other, apart: distance(end, other) });
    }
  }
  pairs.sort((p, q) => p.apart - q.apart || p.a - q.a || p.b - q.b);
  for (const { a, b } of pairs) if (isAlone(a) && isAlone(b)) nodes.unite(a, b);
  for (let end = 0; end < points.length; end++) {
    if (!isAlone(end)) continue;
    const near = within(end, gap).sort((p, q) => distance(end, p) - distance(end, q) || p - q);
    if (near[0] !== undefined) nodes.unite(end, near[0]);
  }
  return nodes.labels();
}

/** Disjoint sets with their sizes. */
class NodeSet {
  private readonly parent: Int32Array;
  private readonly sizes: Int32Array;

  constructor(count: number) {
    this.parent = Int32Array.from({ length: count }, (_, i) => i);
    this.sizes = new Int32Array(count).fill(1);
  }

  root(item: number): number {
    let at = item;
    while (this.parent[at] !== at) {
      const up = this.parent[this.parent[at] as number] as number;
      this.parent[at] = up;
      at = up;
    }
    return at;
  }

  size(item: number): number {
    return this.sizes[this.root(item)] as number;
  }

  unite(a: number, b: number): void {
    const [low, high] = [Math.min(this.root(a), this.root(b)), Math.max(this.root(a), this.root(b))];
    if (low === high) return;
    this.parent[high] = low;
    this.sizes[low] = (this.sizes[low] as number) + (this.sizes[high] as number);
  }

  labels(): Int32Array {
    return Int32Array.from(this.parent, (_, i) => this.root(i));
  }
}
