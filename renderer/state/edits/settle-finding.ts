import type { Finding } from '../../../core/finding';
import type { JobEdit } from '../job-edit';

export interface Settlement {
  readonly finding: Finding;
  /** Why it is accepted; null opens it again. */
  readonly reason: string | null;
}

/** Accepts a finding of weight decide with a reason that goes onto the sheet, or opens it again. */
export const settleFinding: JobEdit<Settlement> = {
  id: 'settle-finding',
  undo: 'step',
  label: ({ finding, reason }) => `${reason === null ? 'Reopen' : 'Settle'} "${finding.title}"`,
  apply: (job, { finding, reason }) => {
    const { [finding.key]: _old, ...others } = job.settled;
    if (reason === null) return { ...job, settled: others };
    const words = reason.trim();
    if (finding.weight !== 'decide' || words === '') return job;
    return { ...job, settled: { ...others, [finding.key]: { reason: words } } };
  },
};
