import { passesOf, type Job, type JobPass } from '../../../core/job';
import type { PartName } from '../../../core/plan';

/** The job with its passes changed, which are then typed: those of a part where it has its own, else those of the die. */
export function withPassesOf(
  job: Job,
  part: PartName,
  change: (passes: readonly JobPass[]) => JobPass[],
): Job {
  return hasOwnPasses(job, part)
    ? withOwnPasses(job, part, change(passesOf(job, part)))
    : { ...job, passRule: 'typed', passes: change(job.passes) };
}

/** Whether a part is cut by passes of its own. */
export const hasOwnPasses = ({ punchPasses, dieSet }: Job, part: PartName): boolean =>
  part !== 'die' && (part === 'punch' ? punchPasses : dieSet[part].passes) !== null;

/** The job with passes of a part's own, which are then typed; null: those of the die. */
export function withOwnPasses(job: Job, part: PartName, passes: readonly JobPass[] | null): Job {
  const own = passes && [...passes];
  const typed = { ...job, passRule: 'typed' } as const;
  if (part === 'die') return own ? { ...typed, passes: own } : typed;
  if (part === 'punch') return { ...typed, punchPasses: own };
  return { ...typed, dieSet: { ...job.dieSet, [part]: { ...job.dieSet[part], passes: own } } };
}
