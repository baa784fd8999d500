import type { Job } from '../../../core/job';
import type { JobEdit } from '../job-edit';

/** Unit and kind of the programs. */
export const setOutput: JobEdit<Partial<Job['output']>> = {
  id: 'set-output',
  undo: 'step',
  label: (change) => (change.unit ? `Programs in ${change.unit}` : `Programs along the ${change.program}`),
  apply: (job, change) => ({ ...job, output: { ...job.output, ...change } }),
};
