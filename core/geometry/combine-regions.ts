import { arrange, type Arrangement } from './arrange';
import type { Region } from './contour';
import { indexOf, nearestSegment, pairsWithin, type SegmentIndex } from './segment-index';
import { directionAt } from './along-segment';
import { int, num, tableOfRegion, type SegmentTable } from './segment-table';
import { backward, drop, forward, middleOfRun, runLength } from './runs';
import { stitchLoops } from './stitch-loops';
import { tolerance } from './tolerance';
import { windingAt } from './winding';

export type Combination = 'union' | 'difference' | 'intersection';

/**
 * Union, difference (a − b) or intersection of two regions of lines and arcs. Boundaries that coincide within the
 * same-boundary tolerance count as one. The result's arcs are parts of the sources' arcs.
 *
 * Idea: cut both boundaries where they meet and judge every run by its middle: inside, outside or on the other region.
 * O(n log n + k log k), and for each run the segments beside its middle.
 */
export function combineRegions(a: Region, b: Region, combination: Combination): Region {
  const table = tableOfRegion([...a, ...b]);
  const count = tableOfRegion(a).count;
  const near = tolerance.sameBoundary;
  const pairs = pairsWithin(indexOf(table), near);
  const across = (visit: (i: number, j: number) => void) =>
    pairs((i, j) => {
      if (i < count !== j < count) visit(i, j);
    });
  const arrangement = arrange(table, across, near);
  const indexA = indexOf(tableOfRegion(a));
  const indexB = indexOf(tableOfRegion(b));
  const fate = new Uint8Array(arrangement.runCount);
  const middle = new Float64Array(2);
  for (let run = 0; run < arrangement.runCount; run++) {
    const piece = middleOfRun(arrangement, run, middle);
    const ofA = int(arrangement.elementOf, piece) < count;
    const place = placeOf(arrangement, piece, middle, ofA ? indexB : indexA);
    fate[run] = ofA ? fatesOfA[combination][place] : fatesOfB[combination][place];
  }
  const isOfA = (run: number): boolean =>
    int(arrangement.elementOf, int(arrangement.pieceOrder, int(arrangement.runStart, run))) < count;
  return stitchLoops(arrangement, fate, {
    takenBack: (run) => (combination === 'difference' && !isOfA(run) ? backward : forward),
    cost: (run) => runLength(arrangement, run),
  });
}

type PlaceOfRun = 'inside' | 'outside' | 'along' | 'against';
type Fates = Readonly<Record<Combination, Readonly<Record<PlaceOfRun, number>>>>;

const fatesOfA: Fates = {
  union: { inside: drop, outside: forward, along: forward, against: drop },
  difference: { inside: drop, outside: forward, along: drop, against: forward },
  intersection: { inside: forward, outside: drop, along: forward, against: drop },
};
/** Where the boundaries coincide, a's run stands for both. */
const fatesOfB: Fates = {
  union: { inside: drop, outside: forward, along: drop, against: drop },
  difference: { inside: backward, outside: drop, along: drop, against: drop },
  intersection: { inside: forward, outside: drop, along: drop, against: drop },
};

function placeOf(
  arrangement: Arrangement,
  piece: number,
  middle: Float64Array,
  other: SegmentIndex,
): PlaceOfRun {
  const x = num(middle, 0);
  const y = num(middle, 1);
  const { segment } = nearestSegment(other, x, y, tolerance.sameBoundary);
  if (segment < 0) return windingAt(other, x, y) > 0 ? 'inside' : 'outside';
  return runAlong(arrangement.pieces, piece, other.table, segment, x, y) ? 'along' : 'against';
}

function runAlong(a: SegmentTable, i: number, b: SegmentTable, j: number, x: number, y: number): boolean {
  const u = new Float64Array(2);
  const v = new Float64Array(2);
  directionAt(a, i, x, y, u);
  directionAt(b, j, x, y, v);
  return num(u, 0) * num(v, 0) + num(u, 1) * num(v, 1) > 0;
}
