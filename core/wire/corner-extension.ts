import type { SharpCorner } from '../die/sharp-corners';
import type { Contour, Point, Region, Vertex } from '../geometry/contour';
import { arcOf } from '../geometry/contour-measures';
import { crossingRoom, crossSegments } from '../geometry/cross-segments';
import { leastDistance } from '../geometry/least-distance';
import { indexOf, pairsWithin, type SegmentIndex } from '../geometry/segment-index';
import { addSegment, emptyTable, tableOfChain, tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import * as portable from '../geometry/portable-math';

/** Outside corners of a member past which the wire runs on instead of rolling round them. */
export interface SharpPath {
  readonly corners: readonly SharpCorner[];
  /** How far past the corner, in offsets. */
  readonly miterLimit: number;
}

/** The wire rolls round every corner. */
export const rollingPath: SharpPath = { corners: [], miterLimit: 1 };

export interface ExtendedLoops {
  readonly loops: Region;
  /** Corners that the wire rolls round after all: what it would run into lies too near. */
  readonly rolled: readonly Point[];
}

/**
 * Loops at an offset from a member's contour whose arcs about some corners give way to both edges' extensions. The
 * tangents at the arc's ends meet offset / sin(angle / 2) from the corner; where that is more than the miter limit
 * allows, the tip is cut off square at the limit. The member stays the same: every point of the extension is at least
 * as far from the corner as the arc it replaces, and one that would come nearer to any other part of the contour, or
 * cross another extension, is left out.
 *
 * Example: 90°, offset 0.15: the tip is 0.15 / sin 45° = 0.2121 from the corner, 0.15 beyond each end of the arc.
 */
export function extendedLoops(
  loops: Region,
  designed: Region,
  offset: number,
  { corners, miterLimit }: SharpPath,
): ExtendedLoops {
  if (corners.length === 0) return { loops, rolled: [] };
  const index = indexOf(tableOfRegion(designed));
  const asked = loops.flatMap((loop, ring) =>
    loop.flatMap((from, segment) => {
      const corner = cornerOfArc(from, next(loop, segment), corners, offset);
      const tip = corner && tipOf(from, next(loop, segment), corner, offset, miterLimit);
      return corner && tip
        ? [{ ring, segment, corner, tip, chain: [from, ...tip, next(loop, segment)] }]
        : [];
    }),
  );
  const free = new Set(withoutCrossings(asked.filter(({ chain }) => keepsAway(chain, index, offset))));
  return {
    loops: loops.map((loop, ring) =>
      extended(loop, new Map([...free].filter((one) => one.ring === ring).map((one) => [one.segment, one]))),
    ),
    rolled: asked.filter((one) => !free.has(one)).map(({ corner }) => corner),
  };
}

/** The loop with tips in place of arcs; an end of such an arc on a straight edge is no vertex any more. */
function extended(loop: Contour, extensions: ReadonlyMap<number, Extension>): Contour {
  if (extensions.size === 0) return loop;
  return loop.flatMap((vertex, segment) => {
    const last = (segment + loop.length - 1) % loop.length;
    const [own, before] = [extensions.get(segment), extensions.get(last)];
    const goesOnStraight = (own && loop[last]?.bulge === 0) ?? (before && vertex.bulge === 0);
    return [
      ...(goesOnStraight ? [] : [{ ...vertex, bulge: own ? 0 : vertex.bulge }]),
      ...straight(own?.tip ?? []),
    ];
  });
}

interface Extension {
  readonly ring: number;
  readonly segment: number;
  readonly corner: Point;
  readonly tip: readonly Point[];
  /** The tip with the arc's ends. */
  readonly chain: readonly Point[];
}

const next = (loop: Contour, segment: number): Vertex => loop[(segment + 1) % loop.length] as Vertex;

const straight = (points: readonly Point[]): Contour => points.map(({ x, y }) => ({ x, y, bulge: 0 }));

/** The corner that an arc of a path is rolled about; null for any other segment. */
function cornerOfArc(
  from: Vertex,
  to: Vertex,
  corners: readonly SharpCorner[],
  offset: number,
): Point | null {
  if (from.bulge === 0) return null;
  const { cx, cy, radius } = arcOf(from, to);
  const near = tolerance.sameBoundary;
  if (Math.abs(radius - offset) > near) return null;
  // An arc that ends early, cut off by another part of the path, has no edges to run on along.
  const swept = 4 * Math.abs(portable.atan(from.bulge));
  const isWhole = ({ turn }: SharpCorner) => Math.abs(swept - turn) * offset <= near;
  return (
    corners.find((corner) => Math.hypot(corner.x - cx, corner.y - cy) <= near && isWhole(corner)) ?? null
  );
}

/** One point where the tangents meet, or the two where the miter limit cuts them off. */
function tipOf(
  from: Vertex,
  to: Vertex,
  corner: Point,
  offset: number,
  miterLimit: number,
): readonly Point[] {
  const half = 2 * Math.abs(portable.atan(from.bulge));
  const sense = Math.sign(from.bulge);
  const whole = offset * portable.tan(half);
  // Along the tangent until its distance from the corner, seen along the bisector, is the limit's.
  const cut = (offset * (miterLimit - portable.cos(half))) / portable.sin(half);
  const ahead = (at: Point, way: number, length: number): Point => ({
    x: at.x - ((way * sense * (at.y - corner.y)) / offset) * length,
    y: at.y + ((way * sense * (at.x - corner.x)) / offset) * length,
  });
  return half < Math.PI / 2 && whole <= cut
    ? [ahead(from, 1, whole)]
    : [ahead(from, 1, cut), ahead(to, -1, cut)];
}

function keepsAway(chain: readonly Point[], designed: SegmentIndex, offset: number): boolean {
  return leastDistance(tableOfChain(straight(chain)), designed).distance >= offset - tolerance.tooNear;
}

/** All that no other one crosses. */
function withoutCrossings(extensions: readonly Extension[]): readonly Extension[] {
  const table = emptyTable(extensions.reduce((sum, { chain }) => sum + chain.length - 1, 0));
  const owner = extensions.flatMap((extension, k) =>
    extension.chain.slice(1).map((to, i) => {
      const from = extension.chain[i] as Point;
      addSegment(table, from.x, from.y, to.x, to.y, 0);
      return k;
    }),
  );
  const crossed = new Set<number | undefined>();
  const out = new Float64Array(crossingRoom);
  pairsWithin(indexOf(table))((i, j) => {
    if (owner[i] === owner[j] || crossSegments(table, i, table, j, out) === 0) return;
    crossed.add(owner[i]);
    crossed.add(owner[j]);
  });
  return extensions.filter((_, k) => !crossed.has(k));
}
