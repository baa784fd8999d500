import type { Point } from '../geometry/contour';
import { sayLength } from '../say';
import { distanceToPath, isInWaste, type LoopRoom } from './loop-room';
import { discTrouble } from './site';

/** A hole that someone wants: its centre, and what it takes, mm. */
export interface WantedHole extends Point {
  readonly diameter: number;
  /** Least from the hole's edge to the path. */
  readonly clearance: number;
}

/**
 * Why a start hole may not be there, as the end of a sentence ("the hole is …"); null where it may. Touching the least
 * distance is allowed.
 */
export function startHoleTrouble(room: LoopRoom, hole: WantedHole): string | null {
  const { diameter, clearance } = hole;
  const radius = diameter / 2;
  if (!isInWaste(room, hole)) {
    return room.waste === 'inside' ? 'outside the opening, in the steel that stays' : 'in the member itself';
  }
  const gap = distanceToPath(room, hole) - radius;
  if (gap < clearance * (1 - hair) - hair) {
    return `too near the path: ${sayLength(Math.max(0, gap))} from its edge, ${sayLength(clearance)} are wanted`;
  }
  const trouble = discTrouble(room.site, hole, radius, clearance);
  if (trouble === 'too near the edge of the block') {
    return `too near the edge of the block: ${sayLength(room.site.site.frame)} of steel have to stay around it`;
  }
  return trouble;
}

const hair = 1 / 1_000_000;
