import { boxAround, contourBox } from '../../core/geometry/contour-measures';
import type { Box } from '../../core/geometry/contour';
import type { Finding, Place } from '../../core/finding';
import type { Plan, Remainder } from '../../core/plan';
import { membersOf } from '../../core/wire/members-of';

/**
 * The place of a finding, as close as it is worth looking at (`reach` is a half width to zoom to): around the stock
 * that the wire leaves, where it leaves any; else as the finding says. Null for a finding about the whole job.
 */
export function placeOfFinding(plan: Plan, finding: Finding): Place | null {
  if (!finding.place) return null;
  const [first, ...others] = remaindersOf(plan, finding.key).map(({ outline }) => contourBox(outline));
  if (!first) return finding.place;
  const box = others.reduce(boxAround, first);
  const reach = Math.min(1.6 * widthOf(box), finding.place.reach);
  // The very corner, where the finding names it; else the middle of what stays.
  if (isWithin(box, finding.place)) return { ...finding.place, reach };
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, reach };
}

/** What the wire leaves at a finding's place. */
export function remaindersOf(plan: Plan, key: string): readonly Remainder[] {
  const byKey = known.get(plan) ?? groupedByFinding(plan);
  known.set(plan, byKey);
  return byKey.get(key) ?? [];
}

const known = new WeakMap<Plan, ReadonlyMap<string, readonly Remainder[]>>();

const isWithin = (box: Box, { x, y }: Place): boolean =>
  x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;

const widthOf = (box: Box): number => Math.max(box.maxX - box.minX, box.maxY - box.minY);

function groupedByFinding(plan: Plan): ReadonlyMap<string, readonly Remainder[]> {
  const byKey = new Map<string, Remainder[]>();
  for (const { remainders } of membersOf(plan)) {
    for (const remainder of remainders) {
      const group = byKey.get(remainder.findingKey);
      if (group) group.push(remainder);
      else byKey.set(remainder.findingKey, [remainder]);
    }
  }
  return byKey;
}
