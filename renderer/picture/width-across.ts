import { firstHit } from '../../core/geometry/first-hit';
import { nearestPoint, signedDistance } from '../../core/geometry/nearest-point';
import { indexOf, type SegmentIndex } from '../../core/geometry/segment-index';
import { tableOfRegion } from '../../core/geometry/segment-table';
import { tolerance } from '../../core/geometry/tolerance';
import type { Point } from '../../core/geometry/contour';
import type { Member } from '../../core/plan';

/**
 * How wide a member is at its contour nearest to a point, measured square to the contour there, mm: the opening of a die,
 * the steel of a punch. Null on the contour itself, where a point tells no direction.
 */
export function widthAcross(member: Member, at: Point): number | null {
  const index = indexOfMember(member);
  const foot = nearestPoint(index, at);
  if (!foot || foot.distance <= tolerance.samePoint) return null;
  const sign = signedDistance(index, at) > 0 ? 1 : -1;
  const inwards = { x: sign * (at.x - foot.x), y: sign * (at.y - foot.y) };
  return firstHit(index, foot, inwards, tolerance.zeroLength)?.distance ?? null;
}

function indexOfMember(member: Member): SegmentIndex {
  const index = known.get(member) ?? indexOf(tableOfRegion(member.designed));
  known.set(member, index);
  return index;
}

const known = new WeakMap<Member, SegmentIndex>();
