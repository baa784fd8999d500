import type { SheetSettings } from '../../../core/inspection-settings';
import type { JobEdit } from '../job-edit';

/** What the user states for every sheet, and which charts are written. */
export const setSheet: JobEdit<Partial<SheetSettings>> = {
  id: 'set-sheet',
  undo: 'step',
  label: (change) => {
    if (change.revision !== undefined) return `Revision ${change.revision || 'not stated'}`;
    if (change.date !== undefined) return `Date ${change.date || 'not stated'}`;
    if (change.page !== undefined) return `Sheets on ${change.page}`;
    return 'Overlay charts';
  },
  apply: (job, change) => ({ ...job, sheet: { ...job.sheet, ...change } }),
};
