import type { PartName } from '../../../core/plan';
import type { JobEdit } from '../job-edit';
import { withoutPass } from '../pass-list';
import { passName } from '../pass-name';
import { withPassesOf } from './passes-of-member';

/** Takes a pass out; the only pass stays. Whatever is last then leaves nothing. */
export const removePass: JobEdit<{ readonly part: PartName; readonly pass: number }> = {
  id: 'remove-pass',
  undo: 'step',
  label: ({ pass }) => `Take out the ${passName(pass).toLowerCase()}`,
  apply: (job, { part, pass }) => withPassesOf(job, part, (passes) => withoutPass(passes, pass)),
};
