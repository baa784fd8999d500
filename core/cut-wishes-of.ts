import type { Job } from './job';
import { lastDecimal } from './last-decimal';
import type { MemberRole } from './plan';
import type { CutWishes } from './wire/cut-wishes';
import type { CutChoices } from './wire/plan-cuts';

/** What the job wants of every cut of a die and of a punch. */
export function cutWishes(job: Job): Readonly<Record<MemberRole, CutWishes>> {
  const wishes = (role: MemberRole): CutWishes => ({
    ...job.lead,
    height: job.blocks[role],
    wireDiameter: job.wire.diameter,
    sequence: job.setup.sequence,
    lastDecimal: lastDecimal(job.output.style, job.output.unit),
  });
  return { die: wishes('die'), punch: wishes('punch') };
}

/** Of all that was chosen for single cuts what concerns one contour's members: their ids name it. */
export function choicesOf(cuts: Job['cuts'], contourId: string): CutChoices {
  return Object.fromEntries(Object.entries(cuts).filter(([id]) => id.split('-')[1] === contourId));
}
