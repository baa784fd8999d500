import { rolledCorners } from './check/corner-findings';
import { cutFindings } from './check/cut-findings';
import { tightPlaces } from './check/tight-places';
import { unproved } from './check/unproved';
import type { PairCorner } from './die/corner-radii';
import type { Finding } from './finding';
import type { Region } from './geometry/contour';
import { memberRelief } from './member-relief';
import type { Member, MemberRole, PartName, Site } from './plan';
import { invariant } from './problem';
import { asCutRegion, cornersRolled } from './wire/as-cut';
import type { SharpPath } from './wire/corner-extension';
import { passOffsets, reachOf, type WirePass } from './wire/pass-offsets';
import type { CutWishes } from './wire/cut-wishes';
import { planCuts, type CutChoices, type PlannedCut } from './wire/plan-cuts';
import { levelDistance, type ReliefPlan } from './wire/plan-relief';

/** The relief of a die, and what the machine can lean its wire, radians. */
export interface DieRelief {
  readonly plan: ReliefPlan;
  readonly largestLean: number;
}

/** One member to be planned. */
export interface MemberQuery {
  readonly id: string;
  readonly role: MemberRole;
  readonly part: PartName;
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

export interface PlannedMember {
  readonly member: Member;
  readonly findings: readonly Finding[];
}

/** A member with its paths, what the wire leaves of it, and its findings. The passes must have been checked. */
export function planMember(query: MemberQuery): PlannedMember {
  const { id, role, part, contourId, designed, sharp, wireDiameter, passes, wishes, site, choices } = query;
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
      ...{ id, role, part, contourId, designed, asCut, remainders: tight.remainders, cuts, proof: unproved },
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
