import { cutFindings } from './check/cut-findings';
import { memberFit } from './check/member-fit';
import { fitFindings, lostFeatures } from './check/pair-findings';
import { proofFindings } from './check/proof-findings';
import { proveMember } from './check/prove-member';
import { tightPlaces } from './check/tight-places';
import { pairContours } from './die/pair-contours';
import type { DrawingContour } from './drawing/drawing';
import type { Finding } from './finding';
import type { Region } from './geometry/contour';
import type { Job } from './job';
import type { Member, MemberRole, Pair } from './plan';
import { invariant } from './problem';
import { asCutRegion } from './wire/as-cut';
import { passOffsets, reachOf } from './wire/pass-offsets';
import { planCuts } from './wire/plan-cuts';

export interface PairPlan {
  readonly pair: Pair;
  readonly findings: readonly Finding[];
}

/** Punch and die of one contour: designed, as cut, paths, findings and proof. The passes must have been checked. */
export function planPair(
  contour: DrawingContour,
  use: 'blank' | 'pierce',
  clearance: number,
  wireDiameter: number,
  passes: Job['passes'],
  punchCorners: Job['punchCorners'],
  lead: Job['lead'],
): PairPlan {
  const reach = reachOf(wireDiameter, passes);
  const matchRadius = punchCorners === 'match the die' ? Math.max(0, reach - clearance) : 0;
  const designed = pairContours(contour.contour, use, clearance, matchRadius);
  const name = `${use}-${contour.id}`;
  const member = (role: MemberRole) =>
    planMember(`${name}-${role}`, role, contour.id, designed[role], wireDiameter, passes, lead);
  const die = member('die');
  const punch = member('punch');
  const fit = memberFit(punch.member.asCut, die.member.asCut);
  const query = {
    contourId: contour.id,
    use,
    drawn: contour.contour,
    punchId: punch.member.id,
    dieId: die.member.id,
    clearance,
    reach,
    cornersMatch: matchRadius > 0,
    fit,
  };
  return {
    pair: { contourId: contour.id, use, die: die.member, punch: punch.member, fit },
    findings: [
      ...lostFeatures(query, use === 'blank' ? designed.punch : designed.die),
      ...die.findings,
      ...punch.findings,
      ...fitFindings(query),
    ],
  };
}

function planMember(
  id: string,
  role: MemberRole,
  contourId: string,
  designed: Region,
  wireDiameter: number,
  passes: Job['passes'],
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
  const planned = planCuts(designed, role, offsets.value, lead);
  const cuts = planned.map(({ cut }) => cut);
  const proof = proveMember(designed, role, cuts, reach);
  return {
    member: { id, role, contourId, designed, asCut, remainders: tight.remainders, cuts, proof },
    findings: [
      ...cutFindings({ memberId: id, contourId, role, designed, cuts: planned, reach, wishes: lead }),
      ...(cuts.length > 0 ? tight.findings : []),
      ...proofFindings(id, contourId, proof, tight.remainders),
    ],
  };
}
