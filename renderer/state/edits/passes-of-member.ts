import type { Job, JobPass } from '../../../core/job';
import type { MemberRole } from '../../../core/plan';

/** The job with its passes changed, which are then typed: those of the punch where it has its own, else those of both. */
export function withPassesOf(
  job: Job,
  role: MemberRole,
  change: (passes: readonly JobPass[]) => JobPass[],
): Job {
  if (role === 'punch' && job.punchPasses !== null) {
    return { ...job, passRule: 'typed', punchPasses: change(job.punchPasses) };
  }
  return { ...job, passRule: 'typed', passes: change(job.passes) };
}
