import { followTable } from '../../../core/follow-table';
import type { Technology } from '../../../core/technology';
import type { JobEdit } from '../job-edit';

export interface TechnologyChange {
  readonly technology: Technology;
  /** What was done, as the history calls it. */
  readonly say: string;
  /** What a run of turns belongs to; without it every change is a step. */
  readonly part?: string;
}

/** The technology table; passes that follow it come along. */
export const setTechnology: JobEdit<TechnologyChange> = {
  id: 'set-technology',
  undo: 'merge',
  part: ({ part = '' }) => part,
  label: ({ say }) => say,
  apply: (job, { technology }) => followTable({ ...job, technology }),
};
