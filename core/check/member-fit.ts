import type { Region } from '../geometry/contour';
import { leastDistance } from '../geometry/least-distance';
import { indexOf, nearestSegment } from '../geometry/segment-index';
import { num, pointAlong, tableOfRegion, type SegmentTable } from '../geometry/segment-table';
import { windingAt } from '../geometry/winding';
import type { Fit } from '../plan';

/**
 * Least and greatest distance from the as-cut punch to the as-cut die opening, mm, signed: negative where the punch
 * would strike the die, by how far it reaches into it. Null where either has no contour.
 *
 * The least one is exact where the two do not overlap. The greatest, and the depth of an overlap, are looked for at
 * all ends and at stretches in between, then narrowed down by golden section to a nanometre.
 */
export function memberFit(punch: Region, die: Region): Fit | null {
  const table = tableOfRegion(punch);
  const opening = indexOf(tableOfRegion(die));
  if (table.count === 0 || opening.table.count === 0) return null;
  const at = new Float64Array(2);
  const gapAt = (segment: number, along: number): number => {
    pointAlong(table, segment, along, at);
    const x = num(at, 0);
    const y = num(at, 1);
    const { distance } = nearestSegment(opening, x, y);
    return windingAt(opening, x, y) > 0 ? distance : -distance;
  };
  const parts = partsFacing(table, opening.table);
  const greatest = extreme(table, parts, gapAt, -1);
  const deepest = extreme(table, parts, gapAt, 1);
  if (deepest.gap < 0) {
    pointAlong(table, deepest.segment, deepest.along, at);
    return { least: deepest.gap, greatest: greatest.gap, leastAt: { x: num(at, 0), y: num(at, 1) } };
  }
  const least = leastDistance(table, opening);
  return { least: least.distance, greatest: greatest.gap, leastAt: least.at };
}

interface Extreme {
  readonly segment: number;
  readonly along: number;
  readonly gap: number;
}

/** How many stretches a segment is looked at in: enough that each faces few segments of the die. */
const partsFacing = (punch: SegmentTable, die: SegmentTable): number =>
  Math.max(4, Math.ceil((4 * die.count) / punch.count));

/** The least (sign 1) or greatest (sign -1) gap over all segments. */
function extreme(
  table: SegmentTable,
  parts: number,
  gapAt: (segment: number, along: number) => number,
  sign: 1 | -1,
): Extreme {
  let best: Extreme = { segment: 0, along: 0, gap: gapAt(0, 0) };
  for (let segment = 0; segment < table.count; segment++) {
    for (let k = 0; k < parts; k++) {
      const gap = gapAt(segment, k / parts);
      if (sign * gap < sign * best.gap) best = { segment, along: k / parts, gap };
    }
  }
  return narrowed(best, 1 / parts, gapAt, sign);
}

function narrowed(
  start: Extreme,
  half: number,
  gapAt: (segment: number, along: number) => number,
  sign: 1 | -1,
): Extreme {
  let low = Math.max(0, start.along - half);
  let high = Math.min(1, start.along + half);
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let k = 0; k < goldenSteps; k++) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (sign * gapAt(start.segment, a) <= sign * gapAt(start.segment, b)) high = b;
    else low = a;
  }
  const along = (low + high) / 2;
  const gap = gapAt(start.segment, along);
  return sign * gap < sign * start.gap ? { segment: start.segment, along, gap } : start;
}
/** 0.618^48 = 1e-10: a nanometre on a segment of 10 m. */
const goldenSteps = 48;
