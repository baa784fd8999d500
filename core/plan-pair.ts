import { cornerFindings, rolledCorners } from './check/corner-findings';
import { cutFindings } from './check/cut-findings';
import { memberFit } from './check/member-fit';
import { lostFeatures } from './check/lost-features';
import { fitFindings } from './check/pair-findings';
import { tightPlaces } from './check/tight-places';
import { unproved } from './check/unproved';
import { pairCorners, type PairCorner } from './die/corner-radii';
import type { CornerRules } from './die/corner-rules';
import { memberSizes } from './die/member-sizes';
import { pairContours } from './die/pair-contours';
import { sharpCorners } from './die/sharp-corners';
import type { DrawingContour } from './drawing/drawing';
import type { Finding } from './finding';
import type { Region } from './geometry/contour';
import { memberId } from './member-id';
import { memberRelief } from './member-relief';
import type { Member, MemberRole, Pair, Site } from './plan';
import { invariant } from './problem';
import { asCutRegion, cornersRolled } from './wire/as-cut';
import type { SharpPath } from './wire/corner-extension';
import { passOffsets, reachOf, type WirePass } from './wire/pass-offsets';
import type { CutWishes } from './wire/cut-wishes';
import { planCuts, type CutChoices, type PlannedCut } from './wire/plan-cuts';
import { levelDistance, type ReliefPlan } from './wire/plan-relief';
import type { WirePasses } from './wire-passes';

export interface PairPlan {
  readonly pair: Pair;
  readonly findings: readonly Finding[];
}

/** The rules for a contour's corners, and how much larger than drawn the contour was made before. */
export interface ContourCorners {
  readonly rules: CornerRules;
  readonly sizeShift: number;
}

/** The relief of a die, and what the machine can lean its wire, radians. */
export interface DieRelief {
  readonly plan: ReliefPlan;
  readonly largestLean: number;
}

/** Punch and die of one contour: designed, as cut, paths and findings, not yet proved. The passes must have been checked. */
export function planPair(
  contour: DrawingContour,
  use: 'blank' | 'pierce',
  clearance: number,
  wireDiameter: number,
  passes: WirePasses,
  { rules, sizeShift }: ContourCorners,
  wishes: Readonly<Record<MemberRole, CutWishes>>,
  sites: Readonly<Record<MemberRole, Site>>,
  choices: CutChoices,
  relief: DieRelief | null = null,
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
      contourId,
      givesSize: (role === 'die') === (use === 'blank'),
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
  const pair: Pair = { contourId, use, die: die.member, punch: punch.member, fit };
  const takesClearance = use === 'blank' ? punch.member : die.member;
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

interface MemberQuery {
  readonly id: string;
  readonly role: MemberRole;
  readonly contourId: string;
  /** Whether the part gets its shape from this member. */
  readonly givesSize: boolean;
  readonly designed: Region;
  readonly corners: readonly PairCorner[];
  readonly sharp: SharpPath;
  readonly wireDiameter: number;
  readonly passes: readonly WirePass[];
  readonly wishes: CutWishes;
  readonly site: Site;
  readonly choices: CutChoices;
  readonly relief: DieRelief | null;
  /** Angle that every pass leans by, radians. */
  readonly taper: number;
}

function planMember(query: MemberQuery): { member: Member; findings: readonly Finding[] } {
  const { id, role, contourId, designed, sharp, wireDiameter, passes, wishes, site, choices } = query;
  const square = passOffsets(wireDiameter, passes);
  invariant(square.ok, 'the passes were checked before');
  const { taper } = query;
  const offsets = square.value.map((pass) => ({ ...pass, offset: levelDistance(pass.offset, taper) }));
  const reach = levelDistance(reachOf(wireDiameter, passes), taper);
  const asCut = asCutRegion(designed, role, reach);
  const tight = tightPlaces({
    memberId: id,
    contourId,
    role,
    designed,
    asCut,
    reach,
    wireDiameter,
    sparkGap: reachOf(wireDiameter, passes) - wireDiameter / 2,
    corners: query.corners,
    givesSize: query.givesSize,
  });
  const planned = planCuts(id, designed, role, offsets, wishes, site, choices, sharp);
  const upright = planned.map(({ cut }) => cut);
  const rolled = cornersRolled(designed, role, reach, sharp);
  const relieved = query.relief && relievedMember(query, query.relief, planned);
  const cuts = relieved?.cuts ?? upright;
  return {
    member: {
      ...{ id, role, contourId, designed, asCut, remainders: tight.remainders, cuts, proof: unproved },
      ...(relieved?.relief ? { relief: relieved.relief } : {}),
    },
    findings: [
      ...cutFindings({ memberId: id, contourId, role, designed, cuts: planned, reach, wishes }),
      ...rolledCorners({ memberId: id, contourId, offset: reach, rolled }),
      ...(cuts.length > 0 ? tight.findings : []),
      ...(relieved?.findings ?? []),
    ],
  };
}

/** The relief's own cut goes with the rough pass's gap, since nothing fits against it; a taper is the opening itself. */
function relievedMember(
  { id, contourId, designed, wireDiameter, passes }: MemberQuery,
  { plan, largestLean }: DieRelief,
  planned: readonly PlannedCut[],
) {
  const [rough] = passes;
  const ofRelief = plan.kind === 'land and relief' && rough;
  return memberRelief({
    memberId: id,
    contourId,
    plan,
    designed,
    planned,
    cuttingRadius: ofRelief ? wireDiameter / 2 + rough.sparkGap : reachOf(wireDiameter, passes),
    feed: rough?.feed ?? 0,
    largestLean,
  });
}
