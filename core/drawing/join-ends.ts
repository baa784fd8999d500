import { tolerance } from '../geometry/tolerance';
import { PointGrid } from './point-grid';
import { stride, type Listed } from './listed';

/**
 * Which ends of strands meet. End 2i is the start of strand i, end 2i + 1 its end; ends with the same node meet.
 *
 * Ends on the same point always meet. After that only ends that are still alone are joined, nearest pair first, as
 * long as they are within the gap: so a piece shorter than the gap keeps its two ends apart, and no cluster grows by
 * hops. Last, an end still alone takes the nearest node within the gap (a branch).
 */
export function joinEnds(strands: Listed<unknown>, gap: number): Int32Array {
  const ends = new Ends(strands);
  const nodes = new NodeSet(ends.count);
  uniteSamePoints(ends, nodes);
  const alone: number[] = [];
  for (let end = 0; end < ends.count; end++) if (nodes.size(end) === 1) alone.push(end);
  if (alone.length === 0 || gap <= tolerance.samePoint) return nodes.labels();
  const pairs = pairsWithin(ends, alone, gap);
  pairs.sort((p, q) => p.apart - q.apart || p.a - q.a || p.b - q.b);
  for (const { a, b } of pairs) if (nodes.size(a) === 1 && nodes.size(b) === 1) nodes.unite(a, b);
  const branches = alone.filter((end) => nodes.size(end) === 1);
  if (branches.length === 0) return nodes.labels();
  const grid = new PointGrid(ends.x, ends.y, gap);
  for (let end = 0; end < ends.count; end++) grid.add(end);
  for (const end of branches) {
    if (nodes.size(end) > 1) continue;
    const nearest = nearestWithin(ends, grid, end, gap);
    if (nearest >= 0) nodes.unite(end, nearest);
  }
  return nodes.labels();
}

/** The ends of all strands in columns. */
class Ends {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  private readonly columns: Float64Array;

  constructor({ items, columns }: Listed<unknown>) {
    this.columns = columns;
    this.count = 2 * items.length;
    this.x = new Float64Array(this.count);
    this.y = new Float64Array(this.count);
    for (let end = 0; end < this.count; end++) {
      const at = stride * (end >> 1) + 2 * (end & 1);
      this.x[end] = columns[at] as number;
      this.y[end] = columns[at + 1] as number;
    }
  }

  distance(a: number, b: number): number {
    const dx = (this.x[a] as number) - (this.x[b] as number);
    const dy = (this.y[a] as number) - (this.y[b] as number);
    return Math.sqrt(dx * dx + dy * dy);
  }

  /** A strand may close on itself only if it is clearly longer than the gap it closes. */
  mayMeet(a: number, b: number, apart: number): boolean {
    return a >> 1 !== b >> 1 || (this.columns[stride * (a >> 1) + 8] as number) > 4 * apart;
  }
}

/** Each end is compared with one representative of every point near it, so that thousands on one point cost no more. */
function uniteSamePoints(ends: Ends, nodes: NodeSet): void {
  const reach = tolerance.samePoint;
  const grid = new PointGrid(ends.x, ends.y, 2 * reach);
  for (let end = 0; end < ends.count; end++) {
    let isNew = true;
    grid.near(ends.x[end] as number, ends.y[end] as number, (other) => {
      const apart = ends.distance(end, other);
      if (apart > reach || !ends.mayMeet(end, other, apart)) return false;
      nodes.unite(end, other);
      isNew = false;
      return true;
    });
    if (isNew) grid.add(end);
  }
}

interface Pair {
  readonly a: number;
  readonly b: number;
  readonly apart: number;
}

/** Pairs of lone ends within the gap; where dozens crowd together nobody can tell which belong together. */
function pairsWithin(ends: Ends, alone: readonly number[], gap: number): Pair[] {
  const grid = new PointGrid(ends.x, ends.y, gap);
  const pairs: Pair[] = [];
  for (const b of alone) {
    let looked = 0;
    grid.near(ends.x[b] as number, ends.y[b] as number, (a) => {
      const apart = ends.distance(a, b);
      if (apart <= gap && ends.mayMeet(a, b, apart)) pairs.push({ a, b, apart });
      return ++looked >= crowd;
    });
    grid.add(b);
  }
  return pairs;
}

const crowd = 16;

function nearestWithin(ends: Ends, grid: PointGrid, end: number, gap: number): number {
  let nearest = -1;
  let least = gap;
  let looked = 0;
  grid.near(ends.x[end] as number, ends.y[end] as number, (other) => {
    const apart = ends.distance(end, other);
    const isNearer = apart < least || (apart === least && (nearest < 0 || other < nearest));
    if (other !== end && isNearer && ends.mayMeet(end, other, apart)) {
      nearest = other;
      least = apart;
    }
    return ++looked >= crowd;
  });
  return nearest;
}

/** Disjoint sets with their sizes. */
class NodeSet {
  private readonly parent: Int32Array;
  private readonly sizes: Int32Array;

  constructor(count: number) {
    this.parent = new Int32Array(count);
    for (let i = 0; i < count; i++) this.parent[i] = i;
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
    const labels = new Int32Array(this.parent.length);
    for (let i = 0; i < labels.length; i++) labels[i] = this.root(i);
    return labels;
  }
}
