import { arrange } from './arrange';
import type { Region } from './contour';
import { rawOffset } from './raw-offset';
import { indexOf, isNearer, pairsWithin, type SegmentIndex } from './segment-index';
import { num, tableOfRegion } from './segment-table';
import { drop, forward, middleOfRun, stitchLoops } from './stitch-loops';
import { tolerance } from './tolerance';

/** A region made ready for any number of offsets: its segments in columns and their index. */
export interface PreparedRegion {
  readonly region: Region;
  readonly index: SegmentIndex;
}

export const prepareRegion = (region: Region): PreparedRegion => ({
  region,
  index: indexOf(tableOfRegion(region)),
});

/**
 * All points farther from the region's boundary than `distance`: positive grows it (the wire outside a punch), negative
 * shrinks it (the wire inside a die opening). Outer loops stay counter-clockwise and holes clockwise; loops may vanish,
 * split or arise. Corners that open are rounded about the corner (the wire rolls). Exact: lines give parallels, arcs
 * concentric arcs. 0 returns the region itself.
 *
 * Idea: the boundary sought is a part of the parallels of all segments and the arcs about all corners. Those are cut
 * wherever they meet, and a run between two meeting places belongs to the result exactly when its middle is nowhere
 * nearer to the source than the distance. Each run is judged on its own, so one ill-conditioned crossing cannot turn
 * the rest inside out. O(n log n + k log k) for k crossings.
 */
export function offsetRegion(source: Region | PreparedRegion, distance: number): Region {
  const prepared = isPrepared(source) ? source : prepareRegion(source);
  if (distance === 0) return prepared.region;
  const raw = rawOffset(prepared.index.table, distance);
  const arrangement = arrange(raw, pairsWithin(indexOf(raw)));
  const fate = new Uint8Array(arrangement.runCount);
  const limit = Math.abs(distance) - tolerance.tooNear;
  const middle = new Float64Array(2);
  for (let run = 0; run < arrangement.runCount; run++) {
    middleOfRun(arrangement, run, middle);
    fate[run] = isNearer(prepared.index, num(middle, 0), num(middle, 1), limit) ? drop : forward;
  }
  return stitchLoops(arrangement, fate).loops;
}

function isPrepared(source: Region | PreparedRegion): source is PreparedRegion {
  return !Array.isArray(source);
}
