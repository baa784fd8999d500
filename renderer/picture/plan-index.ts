import Flatbush from 'flatbush';
import { segmentBox } from '../../core/geometry/contour-measures';
import type { Box, Vertex } from '../../core/geometry/contour';
import type { Member, Plan } from '../../core/plan';

/** One segment of a member's designed contour. */
export interface MemberSegment {
  readonly member: Member;
  readonly from: Vertex;
  readonly to: Vertex;
}

/** All members' segments, to be asked for by place: for the pointer and for the small pictures of places. */
export interface PlanIndex {
  segmentsIn(box: Box): readonly MemberSegment[];
}

/** The index of a plan, made once for each plan. */
export function planIndex(plan: Plan): PlanIndex {
  const known = made.get(plan);
  if (known) return known;
  const index = makeIndex(plan);
  made.set(plan, index);
  return index;
}

const made = new WeakMap<Plan, PlanIndex>();

function makeIndex(plan: Plan): PlanIndex {
  const segments: MemberSegment[] = [];
  for (const pair of plan.pairs) {
    for (const member of [pair.die, pair.punch]) {
      for (const contour of member.designed) {
        contour.forEach((from, i) => {
          const to = contour[i + 1] ?? contour[0];
          if (to) segments.push({ member, from, to });
        });
      }
    }
  }
  if (segments.length === 0) return { segmentsIn: () => [] };
  const tree = new Flatbush(segments.length);
  for (const { from, to } of segments) {
    const box = segmentBox(from, to);
    tree.add(box.minX, box.minY, box.maxX, box.maxY);
  }
  tree.finish();
  return {
    segmentsIn: (box) =>
      tree
        .search(box.minX, box.minY, box.maxX, box.maxY)
        .sort((a, b) => a - b)
        .flatMap((i) => segments[i] ?? []),
  };
}
