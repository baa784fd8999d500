import type { Contour, Region } from '../geometry/contour';
import { openRegion } from '../geometry/open-region';
import { offsetRegion } from '../geometry/offset-region';
import { memberSizes } from './member-sizes';

export interface PairContours {
  readonly die: Region;
  readonly punch: Region;
}

/**
 * The designed contours of die opening and punch for one contour of the drawing: the member that gives the size as
 * drawn, the other at the clearance from it. `punchCornerRadius` rounds the punch's outside corners (0 leaves them);
 * it belongs to the reach minus the clearance, so that the clearance stays even where the die keeps a fillet.
 * A clearance larger than the contour gives an empty region, one that splits it several loops.
 */
export function pairContours(
  drawn: Contour,
  use: 'blank' | 'pierce',
  clearance: number,
  punchCornerRadius: number,
): PairContours {
  const { dieOffset, punchOffset } = memberSizes(use, clearance);
  const punch = offsetRegion([drawn], punchOffset);
  return {
    die: offsetRegion([drawn], dieOffset),
    punch: punchCornerRadius > 0 ? openRegion(punch, punchCornerRadius) : punch,
  };
}
