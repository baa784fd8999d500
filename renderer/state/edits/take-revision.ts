import type { Job } from '../../../core/job';
import type { JobEdit } from '../job-edit';

export interface TakenRevision {
  /** The job as it is after the revision. */
  readonly job: Job;
  readonly say: string;
}

/** The new drawing with the dispositions that carry over, or the carried dispositions alone. */
export const takeRevision: JobEdit<TakenRevision> = {
  id: 'take-revision',
  undo: 'step',
  label: ({ say }) => say,
  apply: (_job, { job }) => job,
};
