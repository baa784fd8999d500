import Flatbush from 'flatbush';
import { num, segmentBoxes, type SegmentTable } from '../geometry/segment-table';

/**
 * Visits every pair of segments (the earlier first) whose boxes overlap or touch, until the visitor has had enough; false
 * then. Segments that follow each other lie near each other, so that an index of short runs of them finds the pairs in
 * half the time and a tenth of the memory of an index of all; where too many runs overlap, as in a spiral, it is one of
 * all. `firsts`: where each contour begins, in order.
 */
export function eachOverlap(
  table: SegmentTable,
  firsts: Int32Array,
  visit: (i: number, j: number) => boolean,
): boolean {
  if (table.count === 0) return true;
  const boxes = segmentBoxes(table);
  const short = runsOf(boxes, startsOf(table.count, firsts, runLength));
  const runs = overlapFew(short) ? short : runsOf(boxes, startsOf(table.count, firsts, 1));
  let goesOn = true;
  for (let a = 0; a + 1 < runs.starts.length && goesOn; a++)
    searchFrom(runs, a, (b) => {
      if (goesOn && b >= a) goesOn = visitRuns(boxes, runs.starts, a, b, visit);
    });
  return goesOn;
}

/** Short enough that looking at all pairs of two runs costs less than an index of them. */
const runLength = 16;

/** Overlapping runs that each run may have on average. */
const fewOverlaps = 12;

interface Runs {
  /** Where each begins, and last the number of segments. */
  readonly starts: Int32Array;
  readonly boxes: Float64Array;
  readonly index: Flatbush;
}

/** Runs of at most so many segments; none goes over from one contour to the next. */
function startsOf(segments: number, firsts: Int32Array, longest: number): Int32Array {
  let count = 0;
  const starts = new Int32Array(segments + 1);
  firsts.forEach((first, k) => {
    const end = k + 1 < firsts.length ? (firsts[k + 1] as number) : segments;
    for (let start = first; start < end; start += longest) starts[count++] = start;
  });
  starts[count] = segments;
  return starts.subarray(0, count + 1);
}

function runsOf(segmentBoxesOf: Float64Array, starts: Int32Array): Runs {
  const count = starts.length - 1;
  const boxes = new Float64Array(4 * count);
  const index = new Flatbush(count);
  for (let r = 0; r < count; r++) {
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = 4 * (starts[r] as number); i < 4 * (starts[r + 1] as number); i += 4) {
      minX = Math.min(minX, num(segmentBoxesOf, i));
      minY = Math.min(minY, num(segmentBoxesOf, i + 1));
      maxX = Math.max(maxX, num(segmentBoxesOf, i + 2));
      maxY = Math.max(maxY, num(segmentBoxesOf, i + 3));
    }
    boxes.set([minX, minY, maxX, maxY], 4 * r);
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  return { starts, boxes, index };
}

function searchFrom({ boxes, index }: Runs, run: number, meet: (other: number) => void): void {
  const at = 4 * run;
  index.search(num(boxes, at), num(boxes, at + 1), num(boxes, at + 2), num(boxes, at + 3), (other) => {
    meet(other);
    return false;
  });
}

function overlapFew(runs: Runs): boolean {
  const count = runs.starts.length - 1;
  let found = 0;
  for (let run = 0; run < count && found <= fewOverlaps * count; run++)
    searchFrom(runs, run, () => void found++);
  return found <= fewOverlaps * count;
}

function visitRuns(
  boxes: Float64Array,
  starts: Int32Array,
  a: number,
  b: number,
  visit: (i: number, j: number) => boolean,
): boolean {
  for (let i = starts[a] as number; i < (starts[a + 1] as number); i++) {
    const minX = num(boxes, 4 * i);
    const minY = num(boxes, 4 * i + 1);
    const maxX = num(boxes, 4 * i + 2);
    const maxY = num(boxes, 4 * i + 3);
    const last = starts[b + 1] as number;
    for (let j = a === b ? i + 1 : (starts[b] as number); j < last; j++) {
      if (num(boxes, 4 * j) > maxX || num(boxes, 4 * j + 2) < minX) continue;
      if (num(boxes, 4 * j + 1) > maxY || num(boxes, 4 * j + 3) < minY) continue;
      if (!visit(i, j)) return false;
    }
  }
  return true;
}
