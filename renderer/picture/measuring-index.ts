import { indexOf, type SegmentIndex } from '../../core/geometry/segment-index';
import { tableOfRegion } from '../../core/geometry/segment-table';
import type { Plan } from '../../core/plan';
import { membersOf } from '../../core/wire/members-of';

/** Everything that a picked point can hold on to: the drawing's contours, and the members as designed and as cut. */
export function measuringIndex(plan: Plan): SegmentIndex {
  const known = made.get(plan);
  if (known) return known;
  const contours = [
    ...plan.drawing.contours.map(({ contour }) => contour),
    ...membersOf(plan).flatMap(({ designed, asCut }) => [...designed, ...asCut]),
  ];
  const index = indexOf(tableOfRegion(contours));
  made.set(plan, index);
  return index;
}

const made = new WeakMap<Plan, SegmentIndex>();
