import Flatbush from 'flatbush';
import type { Point, Region } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import type { MemberRole } from '../plan';
import { lengthOf, pointOn, radiusOf, type PlainMove } from './beside-move';
import { contourMoves } from './loop-ruler';
import type { WireMove } from './wire-path';

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
    for (let i = 0; i + 1 < points.length; i++) {
      const [a, b] = [points[i] as Point, points[i + 1] as Point];
      const distance = edges.distanceTo(a, b, radius - worst.depth);
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
  const step = 2 * Math.acos(Math.max(0, 1 - tolerance.proofChord / radiusOf(move)));
  const count = Math.max(1, Math.ceil(Math.abs(move.turn) / step));
  return Array.from({ length: count + 1 }, (_, i) => pointOn(move, (length * i) / count));
}

/** Contours as chords in a spatial index. */
class Edges {
  private readonly from: Point[] = [];
  private readonly to: Point[] = [];
  private readonly tree: Flatbush | null;

  constructor(contours: Region) {
    for (const contour of contours) {
      for (const points of contourMoves(contour).map(chordsOf)) {
        this.from.push(...points.slice(0, -1));
        this.to.push(...points.slice(1));
      }
    }
    this.tree = this.from.length === 0 ? null : new Flatbush(this.from.length);
    this.from.forEach((a, i) => {
      const b = this.to[i] as Point;
      this.tree?.add(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y));
    });
    this.tree?.finish();
  }

  /** Distance of an edge to the nearest of these, as far as it is less than `below`; else Infinity. */
  distanceTo(a: Point, b: Point, below: number): number {
    let least = Infinity;
    this.tree?.search(
      Math.min(a.x, b.x) - below,
      Math.min(a.y, b.y) - below,
      Math.max(a.x, b.x) + below,
      Math.max(a.y, b.y) + below,
      (i) => {
        least = Math.min(least, edgesApart(a, b, this.from[i] as Point, this.to[i] as Point));
        return false;
      },
    );
    return least;
  }

  /** Whether a point is inside, by how often a ray to the right meets an edge. */
  surround({ x, y }: Point): boolean {
    let isInside = false;
    this.tree?.search(x, y, Infinity, y, (i) => {
      const [a, b] = [this.from[i] as Point, this.to[i] as Point];
      if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) isInside = !isInside;
      return false;
    });
    return isInside;
  }
}

function edgesApart(a: Point, b: Point, c: Point, d: Point): number {
  if (turns(a, b, c) !== turns(a, b, d) && turns(c, d, a) !== turns(c, d, b)) return 0;
  return Math.min(toEdge(a, c, d), toEdge(b, c, d), toEdge(c, a, b), toEdge(d, a, b));
}

const turns = (a: Point, b: Point, c: Point): boolean =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) > 0;

function toEdge(point: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const whole = dx * dx + dy * dy;
  const along = whole === 0 ? 0 : ((point.x - a.x) * dx + (point.y - a.y) * dy) / whole;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(a.x + t * dx - point.x, a.y + t * dy - point.y);
}
