import type { PlateSettings } from '../../../core/die-set-settings';
import { followTable } from '../../../core/follow-table';
import type { PlateName } from '../../../core/plan';
import type { JobEdit } from '../job-edit';

export interface PlateChange {
  readonly plate: PlateName;
  readonly change: Partial<PlateSettings>;
}

/** Whether a plate is made, its fit on the punches, its corners and its height; its passes follow the height. */
export const setPlate: JobEdit<PlateChange> = {
  id: 'set-plate',
  undo: 'merge',
  part: ({ plate, change }) => `${plate}/${Object.keys(change).join()}`,
  label: ({ plate, change }) => {
    if (change.make !== undefined) return change.make ? `Make the ${plate}` : `No ${plate}`;
    if (change.fit !== undefined) return `Fit of the ${plate}`;
    return change.corners === undefined ? `Height of the ${plate}` : `Corners of the ${plate}`;
  },
  apply: (job, { plate, change }) =>
    followTable({ ...job, dieSet: { ...job.dieSet, [plate]: { ...job.dieSet[plate], ...change } } }),
};
