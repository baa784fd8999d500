import { groupBy } from './group-by';
import { joinEnds } from './join-ends';
import type { Listed } from './listed';
import { smoothPairs } from './smooth-pairs';
import type { Strand } from './strand';
import { StrandGraph } from './strand-graph';

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
export function chainStrands(list: Listed<Strand>, gap: number): ChainedStrands {
  const strands = list.items;
  const nodes = joinEnds(list, gap);
  const graph = new StrandGraph(nodes);
  const rings: number[][] = [];
  for (;;) {
    graph.prune();
    const loops = graph.takeLoops();
    for (const loop of loops) rings.push(loop);
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

function openRuns(strands: readonly Strand[], nodes: Int32Array, left: readonly number[]): OpenRun[] {
  if (left.length === 0) return [];
  const isLeft = new Set(left);
  const allEnds = [...nodes.keys()];
  const ringNodes = new Set(
    allEnds.filter((end) => !isLeft.has(end >> 1)).map((end) => nodes[end] as number),
  );
  const leftAt = groupBy(
    allEnds.filter((end) => isLeft.has(end >> 1)),
    (end) => nodes[end] as number,
  );
  const visited = new Set<number>();
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
        const node = nodes[end] as number;
        if (visited.has(node)) continue;
        visited.add(node);
        for (const other of leftAt.get(node) ?? []) {
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
