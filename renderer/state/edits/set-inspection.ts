import type { InspectionSettings } from '../../../core/inspection-settings';
import type { JobEdit } from '../job-edit';

export interface InspectionChange {
  readonly change: Partial<InspectionSettings>;
  /** What the history calls it. */
  readonly say: string;
}

/** Anything about inspection: tolerances, measured points, pinned readings. */
export const setInspection: JobEdit<InspectionChange> = {
  id: 'set-inspection',
  undo: 'merge',
  label: ({ say }) => say,
  part: ({ change }) => Object.keys(change).join(),
  apply: (job, { change }) => ({ ...job, inspection: { ...job.inspection, ...change } }),
};
