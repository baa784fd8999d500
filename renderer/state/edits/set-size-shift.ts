import { formatLength } from '../../../core/units';
import type { JobEdit } from '../job-edit';

export interface SizeShiftChange {
  readonly contourId: string;
  /** mm on each side, more than zero makes it larger; 0: as drawn. */
  readonly sizeShift: number;
}

/** By how much a contour is made larger or smaller than drawn. */
export const setSizeShift: JobEdit<SizeShiftChange> = {
  id: 'set-size-shift',
  undo: 'merge',
  part: ({ contourId }) => contourId,
  label: ({ contourId, sizeShift }, job) =>
    sizeShift === 0
      ? `Contour ${contourId}: size as drawn`
      : `Contour ${contourId}: size shift ${formatLength(sizeShift, job.output.unit)} per side`,
  apply: (job, { contourId, sizeShift }) => {
    const { [contourId]: _old, ...others } = job.sizeShifts;
    return { ...job, sizeShifts: sizeShift === 0 ? others : { ...others, [contourId]: sizeShift } };
  },
};
