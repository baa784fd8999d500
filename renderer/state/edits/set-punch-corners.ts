import type { Job } from '../../../core/job';
import type { JobEdit } from '../job-edit';

/** Whether the punch's outside corners are rounded to match what the wire leaves in the die. */
export const setPunchCorners: JobEdit<Job['punchCorners']> = {
  id: 'set-punch-corners',
  undo: 'step',
  label: (corners) => `Punch corners ${corners}`,
  apply: (job, punchCorners) => ({ ...job, punchCorners }),
};
