/**
 * Strands as edges between nodes; end 2i is the start of strand i, 2i + 1 its end. The ends at a node form a linked list
 * in columns, so that hundreds of thousands cost no objects. Lives for one chaining.
 */
export class StrandGraph {
  /** Strands that turned out to be in no ring. */
  readonly left: number[] = [];
  private readonly node: Int32Array;
  private readonly head: Int32Array;
  private readonly degree: Int32Array;
  private readonly next: Int32Array;
  private readonly before: Int32Array;
  private readonly alive: Uint8Array;
  private aliveCount: number;
  private nodeCount: number;

  constructor(nodes: Int32Array) {
    const ends = nodes.length;
    this.node = nodes.slice();
    this.nodeCount = ends;
    // Parting a junction adds a node for two ends.
    const room = ends + (ends >> 1) + 1;
    this.head = new Int32Array(room).fill(-1);
    this.degree = new Int32Array(room);
    this.next = new Int32Array(ends);
    this.before = new Int32Array(ends);
    this.alive = new Uint8Array(ends >> 1).fill(1);
    this.aliveCount = ends >> 1;
    // From the last on, so that each list begins with its first end.
    for (let end = ends - 1; end >= 0; end--) this.link(end, nodes[end] as number);
  }

  isEmpty(): boolean {
    return this.aliveCount === 0;
  }

  /** Takes out every strand with a dead end, again and again. */
  prune(): void {
    const stack: number[] = [];
    for (let node = 0; node < this.nodeCount; node++) if (this.degree[node] === 1) stack.push(node);
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      if (this.degree[node] !== 1) continue;
      const end = this.head[node] as number;
      const far = this.node[end ^ 1] as number;
      this.remove(end >> 1);
      this.left.push(end >> 1);
      if (this.degree[far] === 1) stack.push(far);
    }
  }

  /** Takes out every path that returns to the node it left, as a list of the ends it enters its strands by. */
  takeLoops(): number[][] {
    const loops: number[][] = [];
    const walked = new Uint8Array(this.alive.length);
    const starts = this.junctions().flat();
    const take = (start: number): void => {
      if (!this.alive[start >> 1] || walked[start >> 1]) return;
      const path = this.walk(start);
      for (const end of path) walked[end >> 1] = 1;
      const last = path[path.length - 1] as number;
      if (this.node[last ^ 1] !== this.node[start]) return;
      for (const end of path) this.remove(end >> 1);
      loops.push(path);
    };
    starts.forEach(take);
    for (let strand = 0; strand < this.alive.length; strand++) take(2 * strand);
    return loops;
  }

  /** The ends at every node where more than two meet. */
  junctions(): number[][] {
    const junctions: number[][] = [];
    for (let node = 0; node < this.nodeCount; node++) {
      if ((this.degree[node] as number) < 3) continue;
      const ends: number[] = [];
      for (let end = this.head[node] as number; end >= 0; end = this.next[end] as number) ends.push(end);
      junctions.push(ends);
    }
    return junctions;
  }

  /** Lets two ends of a junction meet apart from the others there. */
  pairUp(a: number, b: number): void {
    const node = this.node[a] as number;
    if (node !== this.node[b] || (this.degree[node] as number) < 3) return;
    const fresh = this.nodeCount++;
    this.unlink(a);
    this.unlink(b);
    this.link(b, fresh);
    this.link(a, fresh);
  }

  /** From one end along a strand and on through nodes where just two ends meet. */
  private walk(start: number): number[] {
    const path = [start];
    for (;;) {
      const arrived = (path[path.length - 1] as number) ^ 1;
      const node = this.node[arrived] as number;
      if (this.degree[node] !== 2) return path;
      const first = this.head[node] as number;
      const next = first === arrived ? (this.next[first] as number) : first;
      if (next === start) return path;
      path.push(next);
    }
  }

  private remove(strand: number): void {
    this.alive[strand] = 0;
    this.aliveCount--;
    this.unlink(2 * strand);
    this.unlink(2 * strand + 1);
  }

  private link(end: number, node: number): void {
    const first = this.head[node] as number;
    this.node[end] = node;
    this.next[end] = first;
    this.before[end] = -1;
    if (first >= 0) this.before[first] = end;
    this.head[node] = end;
    this.degree[node] = (this.degree[node] as number) + 1;
  }

  private unlink(end: number): void {
    const node = this.node[end] as number;
    const [before, next] = [this.before[end] as number, this.next[end] as number];
    if (before >= 0) this.next[before] = next;
    else this.head[node] = next;
    if (next >= 0) this.before[next] = before;
    this.degree[node] = (this.degree[node] as number) - 1;
  }
}
