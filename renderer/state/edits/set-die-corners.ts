import type { Job } from '../../../core/job';
import type { JobEdit } from '../job-edit';

/** Whether the die's outside corners are rounded to match what the wire leaves in the punch. */
export const setDieCorners: JobEdit<Job['dieCorners']> = {
  id: 'set-die-corners',
  undo: 'step',
  label: (corners) => `Die corners ${corners}`,
  apply: (job, dieCorners) => ({ ...job, dieCorners }),
};
