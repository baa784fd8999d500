import { followTable } from '../../../core/follow-table';
import type { Job } from '../../../core/job';
import type { JobEdit } from '../job-edit';

/** Whether the passes follow the technology table. */
export const setPassRule: JobEdit<Job['passRule']> = {
  id: 'set-pass-rule',
  undo: 'step',
  label: (rule) => (rule === 'table' ? 'Passes from the technology table' : 'Passes as typed'),
  apply: (job, passRule) => followTable({ ...job, passRule }),
};
