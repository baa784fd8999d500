import type { Member, Plan } from '../../core/plan';
import { membersOf } from '../../core/wire/members-of';
import { segmentLookup, segmentsOf, type PlainSegment, type SegmentLookup } from './segment-lookup';

/** One segment of a member's designed contour. */
export interface MemberSegment extends PlainSegment {
  readonly member: Member;
}

/** All members' segments, to be asked for by place: for the pointer and for the small pictures of places. Made once for each plan. */
export function planIndex(plan: Plan): SegmentLookup<MemberSegment> {
  const index = made.get(plan) ?? makeIndex(plan);
  made.set(plan, index);
  return index;
}

const made = new WeakMap<Plan, SegmentLookup<MemberSegment>>();

const makeIndex = (plan: Plan): SegmentLookup<MemberSegment> =>
  segmentLookup(
    membersOf(plan).flatMap((member) =>
      member.designed.flatMap((contour) => segmentsOf(contour, { member })),
    ),
  );
