import type { Arrangement } from './arrange';
import { balanceRuns, type RunDoubt } from './balance-runs';
import { cancelCoincident } from './coincident-runs';
import type { Contour, Vertex } from './contour';
import { backward, drop, endOf, forward, startOf } from './runs';
import { directionAt } from './along-segment';
import { int, num } from './segment-table';
import { tolerance } from './tolerance';
import * as portable from './portable-math';

/**
 * Joins the kept runs into closed loops. Where several meet in one node, each incoming run continues with the first
 * outgoing one clockwise from it, which keeps the area on the left together and leaves touching loops apart. Kept
 * runs that coincide cancel, and doubtful fates are changed where loops would not close. Point-like loops are left
 * out. Changes `fate`. O(r log r).
 */
export function stitchLoops(arrangement: Arrangement, fate: Uint8Array, doubt: RunDoubt): Contour[] {
  cancelCoincident(arrangement, fate);
  balanceRuns(arrangement, fate, doubt);
  const follower = pairAtNodes(arrangement, fate);
  const used = new Uint8Array(arrangement.runCount);
  const loops: Contour[] = [];
  for (let run = 0; run < arrangement.runCount; run++) {
    if (fate[run] === drop || used[run] === 1) continue;
    const ring: number[] = [];
    for (let at = run; used[at] === 0; at = int(follower, at)) {
      used[at] = 1;
      ring.push(at);
    }
    const loop = emitLoop(arrangement, fate, ring);
    if (loop.length > 1) loops.push(loop);
  }
  return loops;
}

/** For each kept run the one that continues it. */
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
    angle: portable.atan2(sign * num(direction, 1), sign * num(direction, 0)),
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
  const pieces = piecesOfRing(a, fate, ring);
  const count = pieces.length;
  // Start where the element changes, so that no segment is cut at the ring's start.
  let start = 0;
  let before = elementOf(a, int(pieces, count - 1));
  while (start < count && elementOf(a, int(pieces, start)) === before) start++;
  if (start === count) start = 0;
  const loop: Vertex[] = [];
  before = -1;
  for (let k = 0; k < count; k++) {
    const signed = int(pieces, start + k < count ? start + k : start + k - count);
    const isBackward = signed < 0;
    const piece = isBackward ? -1 - signed : signed;
    const bulge = isBackward ? -num(a.pieces.bulge, piece) : num(a.pieces.bulge, piece);
    const element = int(a.elementOf, piece);
    const last = element === before ? loop.pop() : undefined;
    before = element;
    if (last) loop.push({ x: last.x, y: last.y, bulge: joinedBulge(last.bulge, bulge) });
    else if (isBackward) loop.push({ x: num(a.pieces.x1, piece), y: num(a.pieces.y1, piece), bulge });
    else loop.push({ x: num(a.pieces.x0, piece), y: num(a.pieces.y0, piece), bulge });
  }
  return loop;
}

/** The pieces of a ring in order; -1 - piece for one that is run backwards. */
function piecesOfRing(a: Arrangement, fate: Uint8Array, ring: readonly number[]): Int32Array {
  let count = 0;
  for (const run of ring) count += int(a.runStart, run + 1) - int(a.runStart, run);
  const pieces = new Int32Array(count);
  let at = 0;
  for (const run of ring) {
    const from = int(a.runStart, run);
    const to = int(a.runStart, run + 1);
    if (fate[run] === backward) for (let k = to - 1; k >= from; k--) pieces[at++] = -1 - int(a.pieceOrder, k);
    else for (let k = from; k < to; k++) pieces[at++] = int(a.pieceOrder, k);
  }
  return pieces;
}

const elementOf = (a: Arrangement, signed: number): number =>
  int(a.elementOf, signed < 0 ? -1 - signed : signed);

const joinedBulge = (a: number, b: number): number =>
  b === 0 ? 0 : portable.tan(portable.atan(a) + portable.atan(b));
