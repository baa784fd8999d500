import { int, type SegmentTable } from './segment-table';

/** Meeting points, merged where they coincide (union-find), over two ends per element and any number of crossings. */
export class MeetingNodes {
  /** One more than the node that a node is merged into; 0 where it stands for itself. */
  private parent: Int32Array;
  /** The junctions in the order in which they were found: their nodes and places. */
  private readonly junctions: number[] = [];
  private readonly x: number[] = [];
  private readonly y: number[] = [];
  /** One more than a node's index among the junctions; 0 for a mere end. */
  private junction: Int32Array;
  /** One more than the element before; 0 where there is none. */
  private readonly previous: Int32Array;
  private readonly elements: number;
  private count: number;
  private readonly samePoint: number;

  constructor(table: SegmentTable, samePoint: number) {
    this.samePoint = samePoint;
    this.elements = table.count;
    this.count = 2 * table.count;
    this.parent = new Int32Array(this.count + 64);
    this.junction = new Int32Array(this.parent.length);
    this.previous = new Int32Array(table.count);
    for (let i = 0; i < table.count; i++) {
      const next = int(table.next, i);
      if (next >= 0) this.previous[next] = i + 1;
    }
  }

  end(element: number, isEnd: boolean): number {
    const previous = int(this.previous, element);
    return isEnd ? element : previous > 0 ? previous - 1 : this.elements + element;
  }

  hasPrevious(element: number): boolean {
    return int(this.previous, element) > 0;
  }

  addCrossing(x: number, y: number): number {
    const node = this.count++;
    if (node === this.parent.length) this.grow();
    this.markJunction(node, x, y);
    return node;
  }

  junctionAtEnd(element: number, isEnd: boolean, x: number, y: number): number {
    const node = this.end(element, isEnd);
    this.markJunction(node, x, y);
    return node;
  }

  joinEnds(i: number, endI: boolean, j: number, endJ: boolean, x: number, y: number): void {
    const a = this.end(i, endI);
    const b = this.end(j, endJ);
    if (a === b) return; // the shared end of neighbours
    this.markJunction(a, x, y);
    this.markJunction(b, x, y);
    this.unite(a, b);
  }

  /** Only junctions are ever merged, so that a node tells it by itself, whatever its root. */
  isJunction(node: number): boolean {
    return int(this.junction, node) > 0;
  }

  root(node: number): number {
    let at = node;
    for (let above = int(this.parent, at); above !== 0; above = int(this.parent, at)) {
      const beyond = int(this.parent, above - 1);
      if (beyond !== 0) this.parent[at] = beyond;
      at = above - 1;
    }
    return at;
  }

  /** Where a junction lies, of its root: all that merged into it stands at the first one's place. */
  placeX(root: number): number {
    return this.x[int(this.junction, root) - 1] as number;
  }
  placeY(root: number): number {
    return this.y[int(this.junction, root) - 1] as number;
  }

  /** Merges junctions within the same-point tolerance of each other: a sweep over x. */
  mergeNear(): void {
    const { x, y, samePoint } = this;
    const sorted = this.junctions.map((_, k) => k).sort((a, b) => (x[a] as number) - (x[b] as number));
    for (let k = 0; k < sorted.length; k++) {
      const a = sorted[k] as number;
      for (let m = k + 1; m < sorted.length; m++) {
        const b = sorted[m] as number;
        if ((x[b] as number) - (x[a] as number) > samePoint) break;
        if (Math.abs((y[b] as number) - (y[a] as number)) <= samePoint)
          this.unite(this.junctions[a] as number, this.junctions[b] as number);
      }
    }
  }

  private markJunction(node: number, x: number, y: number): void {
    if (this.isJunction(node)) return;
    this.junction[node] = this.junctions.push(node);
    this.x.push(x);
    this.y.push(y);
  }

  private unite(a: number, b: number): void {
    const ra = this.root(a);
    const rb = this.root(b);
    if (ra !== rb) this.parent[Math.max(ra, rb)] = Math.min(ra, rb) + 1;
  }

  private grow(): void {
    const parent = new Int32Array(this.parent.length * 2);
    parent.set(this.parent);
    this.parent = parent;
    const junction = new Int32Array(parent.length);
    junction.set(this.junction);
    this.junction = junction;
  }
}
