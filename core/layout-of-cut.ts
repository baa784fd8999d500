import type { CutChoice } from './cut-settings';
import { cutWishes } from './cut-wishes-of';
import type { Job } from './job';
import type { Cut, Member, Plan } from './plan';
import type { CutLayout } from './wire/cut-layout';
import { membersOf } from './wire/members-of';
import { placeCut } from './wire/place-cut';
import { openSite } from './wire/site';

/** A cut of a plan and the member it belongs to. */
export interface OwnedCut {
  readonly member: Member;
  readonly cut: Cut;
}

/** The cut with an id; null where the plan has none. */
export function cutOfPlan(plan: Pick<Plan, 'pairs'>, id: string): OwnedCut | null {
  for (const member of membersOf(plan)) {
    const cut = member.cuts.find((one) => one.id === id);
    if (cut) return { member, cut };
  }
  return null;
}

/**
 * Where hole, leads and tabs of a cut would lie with another choice, as the plan would place them, with the reason for
 * whatever of it is not allowed: quick enough to be asked while something is dragged. Null where the cut has no path.
 */
export function layoutOfCut(
  plan: Pick<Plan, 'pairs' | 'blocks'>,
  job: Job,
  { member, cut }: OwnedCut,
  choice: CutChoice,
): CutLayout | null {
  const [rough] = cut.passes;
  if (!rough) return null;
  const site = plan.blocks.find(({ memberIds }) => memberIds.includes(member.id))?.sites[member.id];
  const wishes = cutWishes(job)[member.part];
  return placeCut(rough.loop, cut.waste, wishes, site ?? openSite, choice, rough.offset);
}
