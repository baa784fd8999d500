import type { PairCorner } from '../die/corner-radii';
import type { Point } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import type { MemberRole } from '../plan';
import * as portable from '../geometry/portable-math';

/**
 * The corner of the drawing from which a member's inside corner comes: the nearest of those that are inside corners of
 * it, where it is as near as the member's contour allows. `room` is how far off the place may be besides, mm.
 */
export function insideCornerAt(
  corners: readonly PairCorner[],
  role: MemberRole,
  { x, y }: Point,
  room: number = tolerance.cornerPlace,
): PairCorner | null {
  let nearest: PairCorner | null = null;
  let least = Infinity;
  for (const corner of corners) {
    if (corner.insideMember !== role) continue;
    const { at, angle } = corner.place;
    const distance = Math.hypot(at.x - x, at.y - y);
    // The parallels of two edges meet shift / sin(angle / 2) from where the edges meet.
    const farthest = room + Math.abs(corner.shift[role]) / portable.sin(angle / 2);
    if (distance > farthest || distance >= least) continue;
    least = distance;
    nearest = corner;
  }
  return nearest;
}
