import { byPart, heightOf, type Job } from './job';
import { lastDecimal } from './last-decimal';
import type { PartName } from './plan';
import type { CutWishes } from './wire/cut-wishes';
import type { CutChoices } from './wire/plan-cuts';

/** What the job wants of every cut of a part. */
export const cutWishes = (job: Job): Readonly<Record<PartName, CutWishes>> =>
  byPart((part) => ({
    ...job.lead,
    height: heightOf(job, part),
    wireDiameter: job.wire.diameter,
    sequence: job.setup.sequence,
    lastDecimal: lastDecimal(job.output.style, job.output.unit),
  }));

/** Of all that was chosen for single cuts what concerns one contour's members: their ids name it. */
export function choicesOf(cuts: Job['cuts'], contourId: string): CutChoices {
  return Object.fromEntries(Object.entries(cuts).filter(([id]) => id.split('-')[1] === contourId));
}
