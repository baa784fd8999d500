import Flatbush from 'flatbush';
import type { Point, Region } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import type { MemberRole } from '../plan';
import { lengthOf, pointOn, radiusOf, type PlainMove } from './beside-move';
import { contourMoves } from './loop-ruler';
import type { WireMove } from './wire-path';
import * as portable from '../geometry/portable-math';

/** Where the wire comes nearest to what has to stay. */
export interface Nearness {
  /** How much nearer than the cutting radius, mm; 0 where it never is. */
  readonly depth: number;
  readonly at: Point | null;
  /** Line of the program. */
  readonly line: number | null;
  /** Line from which on the wire runs on the side where the member is; null where it never does. */
  readonly wrongSide: number | null;
}

/**
 * How near all feeds of a program come to the contours of a block's members, leads, joins and earlier passes among
 * them, with the cutting radius (half the wire and the spark gap) as the measure; and whether a feed ever starts on
 * the member's side. Arcs become chords no farther off than the proof's chord error. O(n log n).
 */
export function clearOfMember(
  moves: readonly WireMove[],
  designed: Region,
  role: MemberRole,
  radius: number,
): Nearness {
  const edges = new Edges(designed);
  const worst: { depth: number; at: Point | null; line: number | null } = { depth: 0, at: null, line: null };
  let wrongSide: number | null = null;
  let isRunning = false;
  for (const move of moves) {
    if (move.isRapid) {
      isRunning = false;
      continue;
    }
    // Without a gap in the path its side can change only across the contour, which is nearness.
    if (!isRunning && edges.surround(move.from) !== (role === 'die')) wrongSide ??= move.line;
    isRunning = true;
    const points = chordsOf(move);
    const near = edges.near(points, radius - worst.depth);
    if (near.length === 0) continue;
    for (let i = 0; i + 1 < points.length; i++) {
      const [a, b] = [points[i] as Point, points[i + 1] as Point];
      const distance = edges.distanceTo(a, b, near, radius - worst.depth);
      if (distance >= radius - worst.depth) continue;
      Object.assign(worst, { depth: radius - distance, at: b, line: move.line });
    }
  }
  return { ...worst, wrongSide };
}

/** A move's chords as points, ends included. */
function chordsOf(move: PlainMove): readonly Point[] {
  const length = lengthOf(move);
  if (!move.centre) return [move.from, move.to];
  const step = 2 * portable.acos(Math.max(0, 1 - tolerance.proofChord / radiusOf(move)));
  const count = Math.max(1, Math.ceil(Math.abs(move.turn) / step));
  return Array.from({ length: count + 1 }, (_, i) => pointOn(move, (length * i) / count));
}

/** Contours as chords in a spatial index. */
class Edges {
  /** Start and end of every chord, four numbers each. */
  private readonly ends: Float64Array;
  private readonly tree: Flatbush | null;

  constructor(contours: Region) {
    const ends: number[] = [];
    for (const move of contours.flatMap(contourMoves)) {
      const points = chordsOf(move);
      for (let k = 0; k + 1 < points.length; k++) {
        const [a, b] = [points[k] as Point, points[k + 1] as Point];
        ends.push(a.x, a.y, b.x, b.y);
      }
    }
    this.ends = Float64Array.from(ends);
    this.tree = ends.length === 0 ? null : new Flatbush(ends.length / 4);
    for (let i = 0; i < ends.length; i += 4) {
      const [ax, ay] = [ends[i] as number, ends[i + 1] as number];
      const [bx, by] = [ends[i + 2] as number, ends[i + 3] as number];
      this.tree?.add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
    }
    this.tree?.finish();
  }

  /** The edges that can come nearer than `below` to a run of points: asked once for all the chords of a move. */
  near(points: readonly Point[], below: number): readonly number[] {
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const { x, y } of points) {
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
    return this.tree?.search(minX - below, minY - below, maxX + below, maxY + below) ?? [];
  }

  /** Distance of an edge to the nearest of some of these, as far as it is less than `below`; else Infinity. */
  distanceTo(a: Point, b: Point, among: readonly number[], below: number): number {
    const { ends } = this;
    let least = below * below;
    for (const i of among) {
      const at = 4 * i;
      const [cx, cy] = [ends[at] as number, ends[at + 1] as number];
      const [dx, dy] = [ends[at + 2] as number, ends[at + 3] as number];
      if (areApart(a.x, b.x, cx, dx, below) || areApart(a.y, b.y, cy, dy, below)) continue;
      least = Math.min(least, squaredApart(a.x, a.y, b.x, b.y, cx, cy, dx, dy));
    }
    return least < below * below ? Math.sqrt(least) : Infinity;
  }

  /** Whether the contours go round a point, by the edges that a ray to the right meets: openings may lie in openings. */
  surround({ x, y }: Point): boolean {
    const { ends } = this;
    let rounds = 0;
    this.tree?.search(x, y, Infinity, y, (i) => {
      const [ax, ay] = [ends[4 * i] as number, ends[4 * i + 1] as number];
      const [bx, by] = [ends[4 * i + 2] as number, ends[4 * i + 3] as number];
      const isCrossed = ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax);
      if (isCrossed) rounds += by > ay ? 1 : -1;
      return false;
    });
    return rounds !== 0;
  }
}

/** Whether two stretches of an axis are farther apart than so much. */
const areApart = (a: number, b: number, c: number, d: number, below: number): boolean =>
  (a < b ? a : b) > (c > d ? c : d) + below || (c < d ? c : d) > (a > b ? a : b) + below;

/** Squared distance of two straight edges, ab and cd: 0 where they cross. */
function squaredApart(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): number {
  const isBetween = turns(ax, ay, bx, by, cx, cy) !== turns(ax, ay, bx, by, dx, dy);
  if (isBetween && turns(cx, cy, dx, dy, ax, ay) !== turns(cx, cy, dx, dy, bx, by)) return 0;
  return Math.min(
    squaredToEdge(ax, ay, cx, cy, dx, dy),
    squaredToEdge(bx, by, cx, cy, dx, dy),
    squaredToEdge(cx, cy, ax, ay, bx, by),
    squaredToEdge(dx, dy, ax, ay, bx, by),
  );
}

const turns = (ax: number, ay: number, bx: number, by: number, x: number, y: number): boolean =>
  (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 0;

function squaredToEdge(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const whole = dx * dx + dy * dy;
  const along = whole === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / whole;
  const t = along < 0 ? 0 : along > 1 ? 1 : along;
  return (ax + t * dx - x) ** 2 + (ay + t * dy - y) ** 2;
}
