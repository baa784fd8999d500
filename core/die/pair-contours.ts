import type { Contour, Region } from '../geometry/contour';
import { offsetRegion } from '../geometry/offset-region';
import type { MemberRole, Use } from '../plan';
import type { PairCorners } from './corner-radii';
import { roundedOutline, type RoundedOutline } from './corner-rounding';
import { memberSizes } from './member-sizes';

export interface PairContours {
  readonly die: Region;
  readonly punch: Region;
  /** Roundings that do not fit, by member; radii are those of the drawn contour. */
  readonly refused: Readonly<Record<MemberRole, RoundedOutline['refused']>>;
}

/**
 * The designed contours of die opening and punch for one contour of the drawing: the member that gives the size as
 * drawn, the other at the clearance from it, each from the outline with its own corners rounded. A clearance larger
 * than the contour gives an empty region, one that splits it several loops.
 */
export function pairContours(
  drawn: Contour,
  use: Use,
  clearance: number,
  { corners, elsewhere }: PairCorners,
): PairContours {
  const { dieOffset, punchOffset } = memberSizes(use, clearance);
  const outline = (role: MemberRole): RoundedOutline =>
    roundedOutline(
      drawn,
      corners.map(({ place, drawingRadius }) => ({ place, radius: drawingRadius[role] })),
      { convex: elsewhere.convex.drawingRadius[role], reflex: elsewhere.reflex.drawingRadius[role] },
    );
  const [die, punch] = [outline('die'), outline('punch')];
  return {
    die: offsetRegion([die.contour], dieOffset),
    punch: offsetRegion([punch.contour], punchOffset),
    refused: { die: die.refused, punch: punch.refused },
  };
}
