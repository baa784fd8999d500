import { passesOf } from '../../../core/job';
import type { PartName } from '../../../core/plan';
import type { JobEdit } from '../job-edit';
import { withOwnPasses } from './passes-of-member';

export interface OwnPasses {
  readonly part: Exclude<PartName, 'die'>;
  readonly which: 'as the die' | 'own';
}

/** Whether a part has passes of its own; they begin as those of the die. */
export const setOwnPasses: JobEdit<OwnPasses> = {
  id: 'set-own-passes',
  undo: 'step',
  label: ({ part, which }) =>
    which === 'own' ? `Passes of its own for the ${part}` : `Passes of the ${part} as of the die`,
  apply: (job, { part, which }) => withOwnPasses(job, part, which === 'own' ? passesOf(job, part) : null),
};
