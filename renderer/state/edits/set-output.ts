import type { Job } from '../../../core/job';
import type { JobEdit } from '../job-edit';

/** Unit, kind and style of the programs. */
export const setOutput: JobEdit<Partial<Job['output']>> = {
  id: 'set-output',
  undo: 'step',
  label: ({ unit, style, program }) => {
    if (style) return `Programs in the style ${style.name}`;
    return unit ? `Programs in ${unit}` : `Programs along the ${program}`;
  },
  apply: (job, change) => ({ ...job, output: { ...job.output, ...change } }),
};
