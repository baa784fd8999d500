import { int, type SegmentTable } from './segment-table';

/** Meeting points, merged where they coincide (union-find), over two ends per element and any number of crossings. */
export class MeetingNodes {
  private parent: Int32Array;
  private readonly x: number[] = [];
  private readonly y: number[] = [];
  private readonly junctionNodes: number[] = [];
  private junction: Uint8Array;
  private readonly previous: Int32Array;
  private readonly elements: number;
  private count: number;
  private readonly samePoint: number;

  constructor(table: SegmentTable, samePoint: number) {
    this.samePoint = samePoint;
    this.elements = table.count;
    this.count = 2 * table.count;
    this.parent = new Int32Array(this.count + 64);
    for (let k = 0; k < this.parent.length; k++) this.parent[k] = k;
    this.junction = new Uint8Array(this.parent.length);
    this.previous = new Int32Array(table.count).fill(-1);
    for (let i = 0; i < table.count; i++) {
      const next = int(table.next, i);
      if (next >= 0) this.previous[next] = i;
    }
  }

  end(element: number, isEnd: boolean): number {
    const previous = int(this.previous, element);
    return isEnd ? element : previous >= 0 ? previous : this.elements + element;
  }

  hasPrevious = (element: number): boolean => int(this.previous, element) >= 0;

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

  isJunction = (node: number): boolean => this.junction[this.root(node)] === 1;

  root(node: number): number {
    let at = node;
    while (int(this.parent, at) !== at) {
      this.parent[at] = int(this.parent, int(this.parent, at));
      at = int(this.parent, at);
    }
    return at;
  }

  /** Where a junction lies, of its root: all that merged into it stands at the first one's place. */
  placeX = (root: number): number => this.x[root] as number;
  placeY = (root: number): number => this.y[root] as number;

  /** Merges junctions within the same-point tolerance of each other: a sweep over x. */
  mergeNear(): void {
    const sorted = this.junctionNodes.sort((a, b) => (this.x[a] as number) - (this.x[b] as number));
    const near = this.samePoint;
    for (let k = 0; k < sorted.length; k++) {
      const a = sorted[k] as number;
      for (let m = k + 1; m < sorted.length; m++) {
        const b = sorted[m] as number;
        if ((this.x[b] as number) - (this.x[a] as number) > near) break;
        if (Math.abs((this.y[b] as number) - (this.y[a] as number)) <= near) this.unite(a, b);
      }
    }
  }

  private markJunction(node: number, x: number, y: number): void {
    if (this.junction[node] === 1) return;
    this.junction[node] = 1;
    this.x[node] = x;
    this.y[node] = y;
    this.junctionNodes.push(node);
    const root = this.root(node);
    if (this.junction[root] !== 1) {
      this.junction[root] = 1;
      this.x[root] = x;
      this.y[root] = y;
    }
  }

  private unite(a: number, b: number): void {
    const ra = this.root(a);
    const rb = this.root(b);
    if (ra !== rb) this.parent[Math.max(ra, rb)] = Math.min(ra, rb);
  }

  private grow(): void {
    const parent = new Int32Array(this.parent.length * 2);
    parent.set(this.parent);
    for (let k = this.parent.length; k < parent.length; k++) parent[k] = k;
    this.parent = parent;
    const junction = new Uint8Array(parent.length);
    junction.set(this.junction);
    this.junction = junction;
  }
}
