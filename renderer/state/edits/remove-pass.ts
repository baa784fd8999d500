import type { MemberRole } from '../../../core/plan';
import type { JobEdit } from '../job-edit';
import { withoutPass } from '../pass-list';
import { passName } from '../pass-name';
import { withPassesOf } from './passes-of-member';

/** Takes a pass out; the only pass stays. Whatever is last then leaves nothing. */
export const removePass: JobEdit<{ readonly role: MemberRole; readonly pass: number }> = {
  id: 'remove-pass',
  undo: 'step',
  label: ({ pass }) => `Take out the ${passName(pass).toLowerCase()}`,
  apply: (job, { role, pass }) => withPassesOf(job, role, (passes) => withoutPass(passes, pass)),
};
