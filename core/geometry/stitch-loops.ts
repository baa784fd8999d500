import type { Arrangement } from './arrange';
import type { Contour, Vertex } from './contour';
import { directionAt, int, num, pointAlong } from './segment-table';
import { tolerance } from './tolerance';

/** What becomes of a run: left out, used as it runs, used the other way round. */
export const drop = 0;
export const forward = 1;
export const backward = 2;

export interface Stitched {
  readonly loops: Contour[];
  /** Length of kept runs that found no partner, mm: 0 unless two pieces were told apart wrongly. */
  readonly unmatched: number;
}

/**
 * Joins the kept runs into closed loops. Where several meet in one node, each incoming run continues with the first
 * outgoing one clockwise from it, which keeps the area on the left together and leaves touching loops apart. Kept
 * runs that coincide and run opposite ways bound nothing and cancel. Runs that lead nowhere (kept by a hair where two
 * boundaries part) are pruned from their loose end on. Point-like loops are left out. O(r log r).
 */
export function stitchLoops(arrangement: Arrangement, fate: Uint8Array): Stitched {
  cancelCoincident(arrangement, fate);
  pruneDangling(arrangement, fate);
  const follower = pairAtNodes(arrangement, fate);
  const used = new Uint8Array(arrangement.runCount);
  const loops: Contour[] = [];
  let unmatched = 0;
  for (let run = 0; run < arrangement.runCount; run++) {
    if (fate[run] === drop || used[run] === 1) continue;
    const ring: number[] = [];
    let at = run;
    while (at >= 0 && used[at] === 0) {
      used[at] = 1;
      ring.push(at);
      at = int(follower, at);
    }
    if (at === run) {
      const loop = emitLoop(arrangement, fate, ring);
      if (loop.length > 1) loops.push(loop);
    } else for (const lost of ring) unmatched += runLength(arrangement, lost);
  }
  return { loops, unmatched };
}

/** Length of a run, mm. */
export function runLength(arrangement: Arrangement, run: number): number {
  let length = 0;
  for (let k = int(arrangement.runStart, run); k < int(arrangement.runStart, run + 1); k++) {
    length += pieceLength(arrangement, int(arrangement.pieceOrder, k));
  }
  return length;
}

/**
 * The point in the middle of the longest piece of a run: the safest one to judge the run by. It lies on the uncut
 * element, which merged nodes have not moved.
 */
export function middleOfRun(arrangement: Arrangement, run: number, into: Float64Array): number {
  let longest = -1;
  let piece = -1;
  for (let k = int(arrangement.runStart, run); k < int(arrangement.runStart, run + 1); k++) {
    const candidate = int(arrangement.pieceOrder, k);
    const length = pieceLength(arrangement, candidate);
    if (length > longest) {
      longest = length;
      piece = candidate;
    }
  }
  pointAlong(
    arrangement.elements,
    int(arrangement.elementOf, piece),
    num(arrangement.middleAlong, piece),
    into,
  );
  return piece;
}

export function pieceLength({ pieces }: Arrangement, piece: number): number {
  const dx = num(pieces.x1, piece) - num(pieces.x0, piece);
  const dy = num(pieces.y1, piece) - num(pieces.y0, piece);
  const b = num(pieces.bulge, piece);
  if (b === 0) return Math.sqrt(dx * dx + dy * dy);
  return num(pieces.radius, piece) * 4 * Math.atan(Math.abs(b));
}

const startOf = (a: Arrangement, fate: Uint8Array, run: number): number =>
  fate[run] === backward ? int(a.endNode, run) : int(a.startNode, run);
const endOf = (a: Arrangement, fate: Uint8Array, run: number): number =>
  fate[run] === backward ? int(a.startNode, run) : int(a.endNode, run);

function cancelCoincident(a: Arrangement, fate: Uint8Array): void {
  const byEnds = new Map<number, number[]>();
  const nodeSpan = a.pieces.count * 4 + 64;
  for (let run = 0; run < a.runCount; run++) {
    if (fate[run] === drop || int(a.startNode, run) < 0) continue;
    const from = int(a.startNode, run);
    const to = int(a.endNode, run);
    const key = Math.min(from, to) * nodeSpan + Math.max(from, to);
    const same = byEnds.get(key);
    if (same) same.push(run);
    else byEnds.set(key, [run]);
  }
  const p = new Float64Array(2);
  const q = new Float64Array(2);
  for (const runs of byEnds.values()) {
    for (let m = 0; m < runs.length; m++) {
      for (let k = m + 1; k < runs.length; k++) {
        const first = runs[m] as number;
        const second = runs[k] as number;
        if (fate[first] === drop || fate[second] === drop) continue;
        middleOfRun(a, first, p);
        middleOfRun(a, second, q);
        if (Math.hypot(num(p, 0) - num(q, 0), num(p, 1) - num(q, 1)) > 2 * tolerance.samePoint) continue;
        // One of two that run the same way is enough; two that run opposite ways bound nothing.
        if (startOf(a, fate, first) !== startOf(a, fate, second)) fate[first] = drop;
        fate[second] = drop;
      }
    }
  }
}

/** Drops kept runs at whose start nothing arrives or from whose end nothing leaves, until none is left. */
function pruneDangling(a: Arrangement, fate: Uint8Array): void {
  const leaving = new Map<number, number[]>();
  const arriving = new Map<number, number[]>();
  const loose: number[] = [];
  for (let run = 0; run < a.runCount; run++) {
    if (fate[run] === drop || int(a.startNode, run) < 0) continue;
    addTo(leaving, startOf(a, fate, run), run);
    addTo(arriving, endOf(a, fate, run), run);
    loose.push(run);
  }
  const kept = (runs: readonly number[] | undefined): number[] =>
    (runs ?? []).filter((run) => fate[run] !== drop);
  for (let run = loose.pop(); run !== undefined; run = loose.pop()) {
    if (fate[run] === drop) continue;
    const from = startOf(a, fate, run);
    const to = endOf(a, fate, run);
    if (kept(arriving.get(from)).length > 0 && kept(leaving.get(to)).length > 0) continue;
    fate[run] = drop;
    loose.push(
      ...kept(arriving.get(from)),
      ...kept(leaving.get(to)),
      ...kept(leaving.get(from)),
      ...kept(arriving.get(to)),
    );
  }
}

/** For each kept run the one that continues it; -1 where there is none. */
function pairAtNodes(a: Arrangement, fate: Uint8Array): Int32Array {
  const follower = new Int32Array(a.runCount).fill(-1);
  const leaving = new Map<number, number[]>();
  const arriving = new Map<number, number[]>();
  for (let run = 0; run < a.runCount; run++) {
    if (fate[run] === drop) continue;
    if (int(a.startNode, run) < 0) {
      follower[run] = run;
      continue;
    }
    addTo(leaving, startOf(a, fate, run), run);
    addTo(arriving, endOf(a, fate, run), run);
  }
  for (const [node, incoming] of arriving) {
    const outgoing = leaving.get(node) ?? [];
    if (incoming.length === 1 && outgoing.length === 1)
      follower[incoming[0] as number] = outgoing[0] as number;
    else pairByAngle(a, fate, incoming, outgoing, follower);
  }
  return follower;
}

interface Spoke {
  readonly run: number;
  readonly leaves: boolean;
  readonly angle: number;
  /** Signed curvature seen from the node: spokes with one tangent are ordered by it. */
  readonly curvature: number;
}

/** Walks the spokes of a node clockwise and gives each incoming run the next free outgoing one. */
function pairByAngle(
  a: Arrangement,
  fate: Uint8Array,
  incoming: readonly number[],
  outgoing: readonly number[],
  follower: Int32Array,
): void {
  const spokes = [
    ...incoming.map((run) => spokeOf(a, fate, run, false)),
    ...outgoing.map((run) => spokeOf(a, fate, run, true)),
  ].sort(clockwise);
  // An incoming spoke followed clockwise by an outgoing one bounds the wedge between them; like brackets they nest.
  const waiting: number[] = [];
  const taken = new Set<number>();
  for (let k = 0; k < 2 * spokes.length; k++) {
    const spoke = spokes[k % spokes.length] as Spoke;
    if (!spoke.leaves) {
      if (k < spokes.length) waiting.push(spoke.run);
    } else if (!taken.has(spoke.run)) {
      const from = waiting.pop();
      if (from === undefined) continue;
      follower[from] = spoke.run;
      taken.add(spoke.run);
    }
  }
}

function clockwise(p: Spoke, q: Spoke): number {
  const turn = q.angle - p.angle;
  return Math.abs(turn) > sameDirection ? turn : q.curvature - p.curvature;
}
/** Tangents nearer than this (radians) count as one: a tangent computed at a merged node is off by samePoint / radius. */
const sameDirection = tolerance.samePoint * 100;

function spokeOf(a: Arrangement, fate: Uint8Array, run: number, leaves: boolean): Spoke {
  // The run's own sense decides which of its ends is at the node and which way it points there.
  const atStart = leaves === (fate[run] === forward);
  const piece = int(a.pieceOrder, atStart ? int(a.runStart, run) : int(a.runStart, run + 1) - 1);
  const { pieces } = a;
  const direction = new Float64Array(2);
  if (atStart) directionAt(pieces, piece, num(pieces.x0, piece), num(pieces.y0, piece), direction);
  else directionAt(pieces, piece, num(pieces.x1, piece), num(pieces.y1, piece), direction);
  const sign = atStart ? 1 : -1;
  const radius = num(pieces.radius, piece);
  const bend = radius === 0 ? 0 : Math.sign(num(pieces.bulge, piece)) / radius;
  return {
    run,
    leaves,
    angle: Math.atan2(sign * num(direction, 1), sign * num(direction, 0)),
    curvature: sign * bend,
  };
}

function addTo(map: Map<number, number[]>, key: number, run: number): void {
  const list = map.get(key);
  if (list) list.push(run);
  else map.set(key, [run]);
}

/** The vertices of a ring of runs; pieces of one element that follow each other become one segment again. */
function emitLoop(a: Arrangement, fate: Uint8Array, ring: readonly number[]): Contour {
  const pieces: number[] = [];
  for (const run of ring) {
    const from = int(a.runStart, run);
    const to = int(a.runStart, run + 1);
    for (let k = from; k < to; k++) {
      pieces.push(fate[run] === backward ? -1 - int(a.pieceOrder, from + to - 1 - k) : int(a.pieceOrder, k));
    }
  }
  // Start where the element changes, so that no segment is cut at the ring's start.
  const elementAt = (k: number): number => {
    const piece = pieces[(k + pieces.length) % pieces.length] as number;
    return int(a.elementOf, piece < 0 ? -1 - piece : piece);
  };
  let start = 0;
  while (start < pieces.length && elementAt(start) === elementAt(start - 1)) start++;
  if (start === pieces.length) start = 0;
  const loop: Vertex[] = [];
  let lastElement = -1;
  for (let k = 0; k < pieces.length; k++) {
    const signed = pieces[(start + k) % pieces.length] as number;
    const piece = signed < 0 ? -1 - signed : signed;
    const bulge = signed < 0 ? -num(a.pieces.bulge, piece) : num(a.pieces.bulge, piece);
    const element = int(a.elementOf, piece);
    const last = loop[loop.length - 1];
    if (last && element === lastElement) {
      loop[loop.length - 1] = {
        x: last.x,
        y: last.y,
        bulge: bulge === 0 ? 0 : Math.tan(Math.atan(last.bulge) + Math.atan(bulge)),
      };
      continue;
    }
    lastElement = element;
    loop.push(
      signed < 0
        ? { x: num(a.pieces.x1, piece), y: num(a.pieces.y1, piece), bulge }
        : { x: num(a.pieces.x0, piece), y: num(a.pieces.y0, piece), bulge },
    );
  }
  return loop;
}
