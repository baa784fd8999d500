import type { Contour, Region, Vertex } from '../geometry/contour';
import { arcOf } from '../geometry/contour-measures';
import { tolerance } from '../geometry/tolerance';
import { asCutRegion } from './as-cut';
import { carrierOf, meetingOf } from './taper-carriers';
import { compensationRoom } from './compensation-room';
import type { PreparedRegion } from '../geometry/offset-region';
import type { MemberRole } from '../plan';
import * as portable from '../geometry/portable-math';

/**
 * The contours that a control is told which offsets by itself: opened a little more than the wire opens them, so that
 * no inside arc is as small as the offset. Where two straights turn little the fillet between them is so short that the
 * program's last decimal could not say the directions at its ends; there they keep their corner, which a control offsets
 * to the meeting point of their parallels.
 */
export function toldContours(
  designed: Region | PreparedRegion,
  role: MemberRole,
  offset: number,
  lastDecimal: number,
): Region {
  const radius = offset + compensationRoom(lastDecimal);
  return asCutRegion(designed, role, radius).map((loop) => withoutFlatFillets(loop, radius));
}

function withoutFlatFillets(loop: Contour, radius: number): Contour {
  const count = loop.length;
  const at = (i: number): Vertex => loop[(i + count) % count] as Vertex;
  const isFlat = (i: number): boolean => {
    const [before, from, to] = [at(i - 1), at(i), at(i + 1)];
    if (from.bulge === 0 || before.bulge !== 0 || to.bulge !== 0) return false;
    if (4 * portable.atan(Math.abs(from.bulge)) > littleTurn) return false;
    return Math.abs(arcOf(from, to).radius - radius) <= tolerance.sameBoundary;
  };
  return loop.flatMap((vertex, i) => {
    if (isFlat(i - 1)) return [];
    if (!isFlat(i)) return [vertex];
    const meeting = meetingOf(carrierOf(at(i - 1), vertex), carrierOf(at(i + 1), at(i + 2)), vertex);
    return [{ ...(meeting ?? vertex), bulge: 0 }];
  });
}

/**
 * 30°, radians: ends off by 1.4 last decimals turn the directions of an arc of turn t, and with them the wire's way beside
 * it, by 1.4 / t of them, less than the four that a control's moves may be apart.
 */
const littleTurn = Math.PI / 6;
