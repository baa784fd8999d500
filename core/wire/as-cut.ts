import type { Point, Region } from '../geometry/contour';
import { closeRegion, openRegion } from '../geometry/open-region';
import { offsetRegion, type PreparedRegion } from '../geometry/offset-region';
import type { MemberRole } from '../plan';
import { extendedLoops, rollingPath, type SharpPath } from './corner-extension';

/**
 * What the wire can really leave: the member's free side opened with a disc of the reach. A die's free side is its
 * opening; a punch's is everything around it, so that the punch itself is closed. Inside corners keep a fillet of
 * the reach, narrower slots stay uncut.
 */
export const asCutRegion = (designed: Region | PreparedRegion, role: MemberRole, reach: number): Region =>
  role === 'die' ? openRegion(designed, reach) : closeRegion(designed, reach);

/**
 * Where the wire's centre runs at an offset from the member's contour: inside a die opening, outside a punch. A
 * punch with enclosed pockets has clockwise loops inside the outer one. The wire rolls round outside corners but for
 * those past which it is to run on.
 */
export function pathLoops(
  designed: Region | PreparedRegion,
  role: MemberRole,
  offset: number,
  sharp: SharpPath = rollingPath,
): Region {
  const loops = rollingLoops(designed, role, offset);
  return extendedLoops(loops, regionOf(designed), offset, sharp).loops;
}

/** The corners that the wire rolls round at an offset although it was to run on past them. */
export const cornersRolled = (
  designed: Region,
  role: MemberRole,
  offset: number,
  sharp: SharpPath,
): readonly Point[] =>
  sharp.corners.length === 0
    ? []
    : extendedLoops(rollingLoops(designed, role, offset), designed, offset, sharp).rolled;

const rollingLoops = (designed: Region | PreparedRegion, role: MemberRole, offset: number): Region =>
  offsetRegion(designed, role === 'die' ? -offset : offset);

const regionOf = (region: Region | PreparedRegion): Region =>
  'neighbours' in region ? region.region : region;
