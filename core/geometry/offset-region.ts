import { arrange, type PairVisitor } from './arrange';
import type { Region } from './contour';
import { cornersOf, type Corners } from './corners';
import { neighboursWithin, type Neighbours } from './neighbours';
import { rawOffset, type RawOffset } from './raw-offset';
import { indexOf, isNearer, nearestSegment, pairsWithin, type SegmentIndex } from './segment-index';
import { int, num, segmentBoxes, squaredDistance, tableOfRegion } from './segment-table';
import { drop, forward, middleOfRun, runLength } from './runs';
import { stitchLoops } from './stitch-loops';
import { tolerance } from './tolerance';

/** A region made ready for any number of offsets up to a reach: segments in columns, their index, who is near whom. */
export interface PreparedRegion {
  readonly region: Region;
  readonly index: SegmentIndex;
  readonly corners: Corners;
  /** Null where the reach is so large that everything is near everything. */
  readonly neighbours: Neighbours | null;
}

/**
 * Prepares a region for offsets of at most `reach` to either side. What is far apart stays so under every offset: two
 * parallels can only meet where their sources lie within twice the distance, so that is found out once.
 */
export function prepareRegion(region: Region, reach: number): PreparedRegion {
  const index = indexOf(tableOfRegion(region));
  return {
    region,
    index,
    corners: cornersOf(index.table),
    neighbours: neighboursWithin(index, 2 * Math.abs(reach) + tolerance.samePoint),
  };
}

/**
 * All points farther from the region's boundary than `distance`: positive grows it (the wire outside a punch), negative
 * shrinks it (the wire inside a die opening). Outer loops stay counter-clockwise and holes clockwise; loops may vanish,
 * split or arise. Corners that open are rounded about the corner (the wire rolls). Exact: lines give parallels, arcs
 * concentric arcs. 0 returns the region itself.
 *
 * Idea: the boundary sought is a part of the parallels of all segments and the arcs about all corners. Those are cut
 * wherever they meet, and a run between two meeting places belongs to the result exactly when its middle is nowhere
 * nearer to the source than the distance. Each run is judged on its own, so one ill-conditioned crossing cannot turn
 * the rest inside out. O(n log n + k log k) for k crossings; of a prepared region O(n + k log k).
 */
export function offsetRegion(source: Region | PreparedRegion, distance: number): Region {
  const prepared = isPrepared(source) ? source : prepareRegion(source, distance);
  if (distance === 0) return prepared.region;
  const raw = rawOffset(prepared.index.table, prepared.corners, distance);
  const neighbours = coveringNeighbours(prepared, distance);
  const arrangement = arrange(
    raw.table,
    neighbours ? pairsOfNeighbours(raw, neighbours) : pairsWithin(indexOf(raw.table)),
  );
  const fate = new Uint8Array(arrangement.runCount);
  const limit = Math.abs(distance) - tolerance.tooNear;
  const middle = new Float64Array(2);
  for (let run = 0; run < arrangement.runCount; run++) {
    const piece = middleOfRun(arrangement, run, middle);
    const x = num(middle, 0);
    const y = num(middle, 1);
    const tooNear = neighbours
      ? isNearerAmong(
          prepared.index,
          neighbours,
          int(raw.sourceOf, int(arrangement.elementOf, piece)),
          x,
          y,
          limit,
        )
      : isNearer(prepared.index, x, y, limit);
    fate[run] = tooNear ? drop : forward;
  }
  return stitchLoops(arrangement, fate, {
    takenBack: () => forward,
    cost: (run) => {
      middleOfRun(arrangement, run, middle);
      const { distance: off } = nearestSegment(prepared.index, num(middle, 0), num(middle, 1));
      return runLength(arrangement, run) * doubtOf(off - limit);
    },
  });
}

/** How sure a run's fate is that comes nearer to the source than the limit (below 0) or stays beyond it. */
function doubtOf(beyond: number): number {
  return beyond < 0 ? 1 - beyond / tolerance.tooNear : Math.min(1, beyond / tolerance.tooNear);
}

function isPrepared(source: Region | PreparedRegion): source is PreparedRegion {
  return !Array.isArray(source);
}

function coveringNeighbours({ neighbours }: PreparedRegion, distance: number): Neighbours | null {
  return neighbours && neighbours.within >= 2 * Math.abs(distance) ? neighbours : null;
}

/** Pairs of raw elements whose boxes touch, looked for only among the elements of neighbouring segments. */
function pairsOfNeighbours(raw: RawOffset, { start, later, list }: Neighbours): PairVisitor {
  const { parallel, join } = raw;
  return (visit) => {
    const boxes = segmentBoxes(raw.table);
    for (let i = 0; i < parallel.length; i++) {
      const from = int(start, i);
      const to = int(later, i);
      for (let side = 0; side < 2; side++) {
        const a = side === 0 ? int(parallel, i) : int(join, i);
        if (a < 0) continue;
        for (let k = from; k < to; k++) {
          const j = int(list, k);
          const b = int(parallel, j);
          const c = int(join, j);
          if (b >= 0 && mayMeet(raw, boxes, a, b)) visit(a, b);
          if (c >= 0 && mayMeet(raw, boxes, a, c)) visit(a, c);
        }
      }
    }
  };
}

function mayMeet(raw: RawOffset, boxes: Float64Array, a: number, b: number): boolean {
  const room = tolerance.samePoint;
  if (num(boxes, 4 * a) > num(boxes, 4 * b + 2) + room) return false;
  if (num(boxes, 4 * b) > num(boxes, 4 * a + 2) + room) return false;
  if (num(boxes, 4 * a + 1) > num(boxes, 4 * b + 3) + room) return false;
  if (num(boxes, 4 * b + 1) > num(boxes, 4 * a + 3) + room) return false;
  if (int(raw.table.next, a) === b) return !meetsNextOnlyThere(raw, a, b);
  if (int(raw.table.next, b) === a) return !meetsNextOnlyThere(raw, b, a);
  return true;
}

/**
 * Whether an element and the one it is linked to can meet nowhere but at their link: an arc about a corner touches the
 * parallels it links, two lines meet once, and carriers that are tangent meet nowhere else (two arcs of less than a
 * full turn together).
 */
function meetsNextOnlyThere({ table, firstJoin, smooth }: RawOffset, from: number, to: number): boolean {
  if (from >= firstJoin || to >= firstJoin) return true;
  const a = num(table.bulge, from);
  const b = num(table.bulge, to);
  return (a === 0 && b === 0) || (smooth[from] === 1 && Math.abs(a) + Math.abs(b) < nearlyFullTurn);
}

/** Two half turns have a bulge of 1 each. */
const nearlyFullTurn = 1.9;

/** Whether any neighbour of a segment comes nearer to a point at the offset from it than the limit. */
function isNearerAmong(
  { table }: SegmentIndex,
  { start, list }: Neighbours,
  segment: number,
  x: number,
  y: number,
  limit: number,
): boolean {
  const squared = limit * limit;
  if (squaredDistance(table, segment, x, y) < squared) return true;
  for (let k = int(start, segment); k < int(start, segment + 1); k++) {
    if (squaredDistance(table, int(list, k), x, y) < squared) return true;
  }
  return false;
}
