import { cornerFindings } from './check/corner-findings';
import { memberFit } from './check/member-fit';
import { lostFeatures } from './check/lost-features';
import { fitFindings } from './check/pair-findings';
import { pairCorners } from './die/corner-radii';
import type { CornerRules } from './die/corner-rules';
import { memberSizes } from './die/member-sizes';
import { pairContours } from './die/pair-contours';
import { sharpCorners } from './die/sharp-corners';
import type { DrawingContour } from './drawing/drawing';
import type { Finding } from './finding';
import { memberId } from './member-id';
import { planMember, type DieRelief } from './plan-member';
import type { MemberRole, Pair, PartName, Site, Use } from './plan';
import { reachOf, type WirePass } from './wire/pass-offsets';
import type { CutWishes } from './wire/cut-wishes';
import type { CutChoices } from './wire/plan-cuts';
import { levelDistance } from './wire/plan-relief';

export interface PairPlan {
  readonly pair: Pair;
  readonly findings: readonly Finding[];
}

/** The rules for a contour's corners, and how much larger than drawn the contour was made before. */
export interface ContourCorners {
  readonly rules: CornerRules;
  readonly sizeShift: number;
}

/** Punch and die of one contour: designed, as cut, paths and findings, not yet proved. The passes must have been checked. */
export function planPair(
  contour: DrawingContour,
  use: Use,
  clearance: number,
  wireDiameter: number,
  passes: Readonly<Record<MemberRole, readonly WirePass[]>>,
  { rules, sizeShift }: ContourCorners,
  wishes: Readonly<Record<MemberRole, CutWishes>>,
  sites: Readonly<Record<MemberRole, Site>>,
  choices: CutChoices,
  relief: DieRelief | null = null,
  /** The steel that the opening is cut in: in a compound tool a piercing die is an opening of the blanking punch. */
  diePart: PartName = 'die',
): PairPlan {
  // Through a tapered opening the wire leans in every pass: in the plane it reaches farther than square to it.
  const taper = relief?.plan.kind === 'one tapered cut' ? relief.plan.angle : 0;
  const reach = {
    die: levelDistance(reachOf(wireDiameter, passes.die), taper),
    punch: reachOf(wireDiameter, passes.punch),
  };
  const drawn = contour.contour;
  const contourId = contour.id;
  const ruled = pairCorners({ contourId, drawn, use, clearance, reach, rules, sizeShift });
  const { corners } = ruled;
  const designed = pairContours(drawn, use, clearance, ruled);
  const sizes = memberSizes(use, clearance);
  const member = (role: MemberRole) =>
    planMember({
      id: memberId(use, contourId, role),
      role,
      part: role === 'die' ? diePart : 'punch',
      contourId,
      givesSize: (role === 'die') === (use !== 'pierce'),
      designed: designed[role],
      corners,
      sharp: {
        corners: sharpCorners({
          designed: designed[role],
          role,
          drawn,
          offset: role === 'die' ? sizes.dieOffset : sizes.punchOffset,
          corners,
          path: rules.path,
        }),
        miterLimit: rules.miterLimit,
      },
      wireDiameter,
      passes: passes[role],
      wishes: wishes[role],
      site: sites[role],
      choices,
      relief: role === 'die' ? relief : null,
      taper: role === 'die' ? taper : 0,
    });
  const die = member('die');
  const punch = member('punch');
  const fit = memberFit(punch.member.asCut, die.member.asCut);
  const pair: Pair = {
    contourId,
    use,
    gap: clearance,
    sizeShift,
    isOneBlock: false,
    die: die.member,
    punch: punch.member,
    plates: [],
    fit,
  };
  const takesClearance = use === 'pierce' ? die.member : punch.member;
  const memberIds = { die: die.member.id, punch: punch.member.id };
  return {
    pair,
    findings: [
      ...lostFeatures({
        contourId,
        use,
        drawn,
        designed: takesClearance.designed,
        memberId: takesClearance.id,
        clearance,
      }),
      ...cornerFindings({ contourId, use, memberIds, corners, refused: designed.refused }),
      ...die.findings,
      ...punch.findings,
      ...fitFindings({ pair, clearance, reach, corners }),
    ],
  };
}
