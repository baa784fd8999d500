import type { Contour, Region } from '../geometry/contour';
import { closeRegion, openRegion } from '../geometry/open-region';
import { offsetRegion } from '../geometry/offset-region';
import { memberSizes } from './member-sizes';

export interface PairContours {
  readonly die: Region;
  readonly punch: Region;
}

/**
 * The designed contours of die opening and punch for one contour of the drawing: the member that gives the size as
 * drawn, the other at the clearance from it. `cornerRadius` rounds a member's outside corners (0 leaves them); with
 * the reach minus the clearance the clearance stays even where the other member keeps a fillet of the reach. Outside
 * corners of a die are those that its material pushes into the opening. A clearance larger than the contour gives an
 * empty region, one that splits it several loops.
 */
export function pairContours(
  drawn: Contour,
  use: 'blank' | 'pierce',
  clearance: number,
  cornerRadius: { readonly punch: number; readonly die: number },
): PairContours {
  const { dieOffset, punchOffset } = memberSizes(use, clearance);
  const die = offsetRegion([drawn], dieOffset);
  const punch = offsetRegion([drawn], punchOffset);
  return {
    die: cornerRadius.die > 0 ? closeRegion(die, cornerRadius.die) : die,
    punch: cornerRadius.punch > 0 ? openRegion(punch, cornerRadius.punch) : punch,
  };
}
