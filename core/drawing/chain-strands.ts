import { groupBy } from './group-by';
import { joinEnds } from './join-ends';
import { smoothPairs } from './smooth-pairs';
import type { Strand } from './strand';

export interface ChainedStrands {
  readonly rings: readonly (readonly DirectedStrand[])[];
  /** Strands that are part of no ring, those that hang together in one list. */
  readonly open: readonly OpenRun[];
  /** Which ends meet: end 2i is the start of strand i, 2i + 1 its end. */
  readonly nodes: Int32Array;
}

export interface DirectedStrand {
  readonly strand: Strand;
  readonly forward: boolean;
}

export interface OpenRun {
  readonly strands: readonly Strand[];
  /** Ends that meet nothing else. */
  readonly freeEnds: readonly { readonly x: number; readonly y: number }[];
  /** Whether it hangs on a ring. */
  readonly isBranch: boolean;
}

/**
 * Chains open strands into rings, whatever their order and direction. Where more than two ends meet, dead ends are
 * left out first, then a path that leaves and returns to the place is a ring by itself, then the two ends that run
 * on most smoothly belong together; what remains is an open run.
 */
export function chainStrands(strands: readonly Strand[], gap: number): ChainedStrands {
  const nodes = joinEnds(strands, gap);
  const graph = new StrandGraph(strands.length, nodes);
  const rings: number[][] = [];
  for (;;) {
    graph.prune();
    const loops = graph.takeLoops();
    rings.push(...loops);
    if (graph.isEmpty()) break;
    if (loops.length > 0) continue;
    for (const [a, b] of smoothPairs(strands, graph.junctions())) graph.pairUp(a, b);
  }
  return {
    rings: rings.map((ring) =>
      ring.map((end) => ({ strand: strands[end >> 1] as Strand, forward: (end & 1) === 0 })),
    ),
    open: openRuns(strands, nodes, graph.left),
    nodes,
  };
}

/** Strands as edges between nodes; end 2i is the start of strand i, 2i + 1 its end. Lives for one chaining. */
class StrandGraph {
  /** Strands that turned out to be in no ring. */
  readonly left: number[] = [];
  private readonly node: Int32Array;
  private readonly endsAt = new Map<number, Set<number>>();
  private readonly alive: Set<number>;
  private nextNode: number;

  constructor(count: number, nodes: Int32Array) {
    this.node = nodes.slice();
    this.nextNode = nodes.length;
    this.alive = new Set(Array.from({ length: count }, (_, i) => i));
    this.node.forEach((node, end) => this.ends(node).add(end));
  }

  isEmpty(): boolean {
    return this.alive.size === 0;
  }

  /** Takes out every strand with a dead end, again and again. */
  prune(): void {
    const stack = [...this.endsAt.keys()].filter((node) => this.ends(node).size === 1);
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      const [end] = this.ends(node);
      if (end === undefined || this.ends(node).size !== 1) continue;
      const far = this.nodeOf(end ^ 1);
      this.remove(end >> 1);
      this.left.push(end >> 1);
      if (this.ends(far).size === 1) stack.push(far);
    }
  }

  /** Takes out every path that returns to the node it left, as a list of the ends it enters its strands by. */
  takeLoops(): number[][] {
    const loops: number[][] = [];
    const walked = new Set<number>();
    const junctionEnds = this.junctions().flat();
    for (const start of [...junctionEnds, ...[...this.alive].map((strand) => 2 * strand)]) {
      if (!this.alive.has(start >> 1) || walked.has(start >> 1)) continue;
      const path = this.walk(start);
      for (const end of path) walked.add(end >> 1);
      const last = path[path.length - 1] as number;
      if (this.nodeOf(last ^ 1) !== this.nodeOf(start)) continue;
      for (const end of path) this.remove(end >> 1);
      loops.push(path);
    }
    return loops;
  }

  /** The ends at every node where more than two meet. */
  junctions(): number[][] {
    return [...this.endsAt.values()].filter((ends) => ends.size > 2).map((ends) => [...ends]);
  }

  /** Lets two ends of a junction meet apart from the others there. */
  pairUp(a: number, b: number): void {
    const node = this.nodeOf(a);
    if (node !== this.nodeOf(b) || this.ends(node).size < 3) return;
    const fresh = this.nextNode++;
    for (const end of [a, b]) {
      this.ends(node).delete(end);
      this.node[end] = fresh;
      this.ends(fresh).add(end);
    }
  }

  /** From one end along a strand and on through nodes where just two ends meet. */
  private walk(start: number): number[] {
    const path = [start];
    for (;;) {
      const arrived = (path[path.length - 1] as number) ^ 1;
      const here = this.ends(this.nodeOf(arrived));
      if (here.size !== 2) return path;
      const [first, second] = here;
      const next = (first === arrived ? second : first) as number;
      if (next === start) return path;
      path.push(next);
    }
  }

  private remove(strand: number): void {
    this.alive.delete(strand);
    this.ends(this.nodeOf(2 * strand)).delete(2 * strand);
    this.ends(this.nodeOf(2 * strand + 1)).delete(2 * strand + 1);
  }

  private nodeOf(end: number): number {
    return this.node[end] as number;
  }

  private ends(node: number): Set<number> {
    let ends = this.endsAt.get(node);
    if (!ends) this.endsAt.set(node, (ends = new Set()));
    return ends;
  }
}

function openRuns(strands: readonly Strand[], nodes: Int32Array, left: readonly number[]): OpenRun[] {
  const isLeft = new Set(left);
  const allEnds = [...nodes.keys()];
  const ringNodes = new Set(
    allEnds.filter((end) => !isLeft.has(end >> 1)).map((end) => nodes[end] as number),
  );
  const leftAt = groupBy(
    allEnds.filter((end) => isLeft.has(end >> 1)),
    (end) => nodes[end] as number,
  );
  const seen = new Set<number>();
  const runs: OpenRun[] = [];
  for (const first of [...left].sort((a, b) => a - b)) {
    if (seen.has(first)) continue;
    const members: number[] = [];
    const queue = [first];
    seen.add(first);
    for (let strand = queue.pop(); strand !== undefined; strand = queue.pop()) {
      members.push(strand);
      for (const end of [2 * strand, 2 * strand + 1]) {
        for (const other of leftAt.get(nodes[end] as number) ?? []) {
          if (seen.has(other >> 1)) continue;
          seen.add(other >> 1);
          queue.push(other >> 1);
        }
      }
    }
    const ends = members.flatMap((strand) => [2 * strand, 2 * strand + 1]);
    const isFree = (end: number): boolean =>
      leftAt.get(nodes[end] as number)?.length === 1 && !ringNodes.has(nodes[end] as number);
    runs.push({
      strands: members.map((strand) => strands[strand] as Strand),
      freeEnds: ends.filter(isFree).map((end) => {
        const { chain } = strands[end >> 1] as Strand;
        const { x, y } = chain[(end & 1) === 0 ? 0 : chain.length - 1] as { x: number; y: number };
        return { x, y };
      }),
      isBranch: ends.some((end) => ringNodes.has(nodes[end] as number)),
    });
  }
  return runs;
}
