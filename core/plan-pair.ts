import { cutFindings } from './check/cut-findings';
import { memberFit } from './check/member-fit';
import { lostFeatures } from './check/lost-features';
import { fitFindings } from './check/pair-findings';
import { proofFindings } from './check/proof-findings';
import { finishedLoops, proveMember } from './check/prove-member';
import { tightPlaces } from './check/tight-places';
import { pairContours } from './die/pair-contours';
import type { DrawingContour } from './drawing/drawing';
import type { Finding } from './finding';
import type { Region } from './geometry/contour';
import type { Job } from './job';
import type { Member, MemberRole, Pair } from './plan';
import { invariant } from './problem';
import { asCutRegion } from './wire/as-cut';
import { passOffsets, reachOf, type WirePass } from './wire/pass-offsets';
import { planCuts } from './wire/plan-cuts';
import type { WirePasses } from './wire-passes';

export interface PairPlan {
  readonly pair: Pair;
  readonly findings: readonly Finding[];
}

/** Which member's outside corners are rounded so that they match the fillets the wire leaves in the other. */
export interface Matching {
  readonly punch: boolean;
  readonly die: boolean;
}

/** Punch and die of one contour: designed, as cut, paths, findings and proof. The passes must have been checked. */
export function planPair(
  contour: DrawingContour,
  use: 'blank' | 'pierce',
  clearance: number,
  wireDiameter: number,
  passes: WirePasses,
  matching: Matching,
  lead: Job['lead'],
): PairPlan {
  const reach = { die: reachOf(wireDiameter, passes.die), punch: reachOf(wireDiameter, passes.punch) };
  // A member's outside corners match the fillets that the wire leaves in the other one.
  const designed = pairContours(contour.contour, use, clearance, {
    punch: matching.punch ? Math.max(0, reach.die - clearance) : 0,
    die: matching.die ? Math.max(0, reach.punch - clearance) : 0,
  });
  const name = `${use}-${contour.id}`;
  const member = (role: MemberRole) =>
    planMember(`${name}-${role}`, role, contour.id, designed[role], wireDiameter, passes[role], lead);
  const die = member('die');
  const punch = member('punch');
  const fit = memberFit(punch.member.asCut, die.member.asCut);
  const pair: Pair = { contourId: contour.id, use, die: die.member, punch: punch.member, fit };
  const takesClearance = use === 'blank' ? punch.member : die.member;
  return {
    pair,
    findings: [
      ...lostFeatures({
        contourId: contour.id,
        use,
        drawn: contour.contour,
        designed: takesClearance.designed,
        memberId: takesClearance.id,
        clearance,
      }),
      ...die.findings,
      ...punch.findings,
      ...fitFindings({ pair, clearance, reach, matching }),
    ],
  };
}

function planMember(
  id: string,
  role: MemberRole,
  contourId: string,
  designed: Region,
  wireDiameter: number,
  passes: readonly WirePass[],
  lead: Job['lead'],
): { member: Member; findings: readonly Finding[] } {
  const offsets = passOffsets(wireDiameter, passes);
  invariant(offsets.ok, 'the passes were checked before');
  const reach = reachOf(wireDiameter, passes);
  const asCut = asCutRegion(designed, role, reach);
  const sparkGap = reach - wireDiameter / 2;
  const tight = tightPlaces({
    memberId: id,
    contourId,
    role,
    designed,
    asCut,
    reach,
    wireDiameter,
    sparkGap,
  });
  const planned = planCuts(id, designed, role, offsets.value, lead);
  const cuts = planned.map(({ cut }) => cut);
  const proof = proveMember(designed, role, finishedLoops(cuts), reach);
  return {
    member: { id, role, contourId, designed, asCut, remainders: tight.remainders, cuts, proof },
    findings: [
      ...cutFindings({ memberId: id, contourId, role, designed, cuts: planned, reach, wishes: lead }),
      ...(cuts.length > 0 ? tight.findings : []),
      ...proofFindings(id, contourId, proof, tight.remainders),
    ],
  };
}
