import FlatQueue from 'flatqueue';
import type { Arrangement } from './arrange';
import { backward, drop, endOf, startOf } from './runs';
import { int } from './segment-table';

/** What a change of one run's fate costs: the less it is certain and the shorter it is, the cheaper. */
export interface RunDoubt {
  /** Fate a dropped run has when it is taken back. */
  readonly takenBack: (run: number) => number;
  readonly cost: (run: number) => number;
}

/**
 * Makes the kept runs a set of closed loops: at every node as many leave as arrive. Where the judge of the runs has
 * erred by a hair, a run is missing or too much; the cheapest change of fates that balances the nodes is made, so that
 * a loop is closed again rather than lost, and a whisker goes rather than the loop it hangs on.
 *
 * Idea: successive shortest paths (minimum-cost flow, Dijkstra), from a node where too many arrive to one where too
 * many leave, along dropped runs and against kept ones. O(r) where all is balanced, else O(r log r) a path.
 */
export function balanceRuns(a: Arrangement, fate: Uint8Array, doubt: RunDoubt): void {
  const surplus = surplusAtNodes(a, fate);
  if (surplus.size === 0) return;
  const runsAt = new Map<number, number[]>();
  for (let run = 0; run < a.runCount; run++) {
    if (int(a.startNode, run) < 0) continue;
    addTo(runsAt, int(a.startNode, run), run);
    addTo(runsAt, int(a.endNode, run), run);
  }
  for (const node of [...surplus.keys()]) {
    while ((surplus.get(node) ?? 0) > 0) {
      const path = cheapestPath(a, fate, doubt, runsAt, node, (to) => (surplus.get(to) ?? 0) < 0);
      for (const run of path.runs) fate[run] = fate[run] === drop ? doubt.takenBack(run) : drop;
      surplus.set(node, (surplus.get(node) ?? 0) - 1);
      surplus.set(path.to, (surplus.get(path.to) ?? 0) + 1);
    }
  }
}

/** Arriving less leaving kept runs, for the nodes where they differ. */
function surplusAtNodes(a: Arrangement, fate: Uint8Array): Map<number, number> {
  const surplus = new Map<number, number>();
  const count = (node: number, by: number): void => {
    const sum = (surplus.get(node) ?? 0) + by;
    if (sum === 0) surplus.delete(node);
    else surplus.set(node, sum);
  };
  for (let run = 0; run < a.runCount; run++) {
    if (fate[run] === drop || int(a.startNode, run) < 0) continue;
    count(startOf(a, fate, run), -1);
    count(endOf(a, fate, run), 1);
  }
  return surplus;
}

interface Path {
  readonly runs: readonly number[];
  readonly to: number;
}

/** There is always one: a surplus is made by kept runs, and against them a path leads to where they come from. */
function cheapestPath(
  a: Arrangement,
  fate: Uint8Array,
  { takenBack, cost }: RunDoubt,
  runsAt: ReadonlyMap<number, readonly number[]>,
  from: number,
  isWanted: (node: number) => boolean,
): Path {
  const costTo = new Map([[from, 0]]);
  const runTo = new Map<number, { run: number; from: number }>();
  const settled = new Set<number>();
  const queue = new FlatQueue<number>();
  queue.push(from, 0);
  for (let node = queue.pop(); node !== undefined; node = queue.pop()) {
    if (settled.has(node)) continue;
    settled.add(node);
    if (isWanted(node)) {
      const runs: number[] = [];
      for (let step = runTo.get(node); step; step = runTo.get(step.from)) runs.push(step.run);
      return { runs, to: node };
    }
    for (const run of runsAt.get(node) ?? []) {
      const next = otherEnd(a, fate, takenBack(run), run, node);
      if (next < 0) continue;
      const total = (costTo.get(node) ?? 0) + cost(run);
      if (total >= (costTo.get(next) ?? Infinity)) continue;
      costTo.set(next, total);
      runTo.set(next, { run, from: node });
      queue.push(next, total);
    }
  }
  throw new Error('no path balances the runs');
}

/** Where a change of the run's fate leads from a node: on along a dropped run, back against a kept one; -1 nowhere. */
function otherEnd(a: Arrangement, fate: Uint8Array, takenBack: number, run: number, node: number): number {
  if (fate[run] !== drop) return endOf(a, fate, run) === node ? startOf(a, fate, run) : -1;
  const [from, to] = [int(a.startNode, run), int(a.endNode, run)];
  if (takenBack === backward) return to === node ? from : -1;
  return from === node ? to : -1;
}

function addTo(map: Map<number, number[]>, key: number, run: number): void {
  const list = map.get(key);
  if (list) list.push(run);
  else map.set(key, [run]);
}
