import type { PartName } from '../../../core/plan';
import { withSkim } from '../pass-list';
import type { JobEdit } from '../job-edit';
import { withPassesOf } from './passes-of-member';

/** One more skim at the end of a member's passes. */
export const addPass: JobEdit<PartName> = {
  id: 'add-pass',
  undo: 'step',
  label: () => 'Add a skim',
  apply: (job, part) => withPassesOf(job, part, withSkim),
};
