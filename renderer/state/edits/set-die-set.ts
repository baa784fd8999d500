import type { DieSetSettings } from '../../../core/die-set-settings';
import type { JobEdit } from '../job-edit';

export interface DieSetChange {
  /** What the history calls it. */
  readonly say: string;
  readonly change: Partial<DieSetSettings>;
}

/** Anything of the die set: arrangement, force, punches, block, sections, strip. */
export const setDieSet: JobEdit<DieSetChange> = {
  id: 'set-die-set',
  undo: 'merge',
  part: ({ say }) => say,
  label: ({ say }) => say,
  apply: (job, { change }) => ({ ...job, dieSet: { ...job.dieSet, ...change } }),
};
