import { passName } from '../pass-name';
import type { JobEdit } from '../job-edit';

/** Takes a pass out; the only pass stays. Whatever is last then leaves nothing. */
export const removePass: JobEdit<number> = {
  id: 'remove-pass',
  undo: 'step',
  label: (pass) => `Take out the ${passName(pass).toLowerCase()}`,
  apply: (job, pass) => {
    if (job.passes.length === 1) return job;
    const left = job.passes.filter((_, index) => index !== pass);
    return {
      ...job,
      passRule: 'typed',
      passes: left.map((old, index) => (index === left.length - 1 ? { ...old, stockLeft: 0 } : old)),
    };
  },
};
