import type { FitSettings } from '../../../core/die-set-settings';
import type { JobEdit } from '../job-edit';

export interface PlugFitChange {
  readonly contourId: string;
  readonly fit: FitSettings;
}

/** How the plug of a contour sits in its hole. */
export const setPlugFit: JobEdit<PlugFitChange> = {
  id: 'set-plug-fit',
  undo: 'merge',
  part: ({ contourId }) => contourId,
  label: ({ contourId }) => `Fit of ${contourId}`,
  apply: (job, { contourId, fit }) => ({
    ...job,
    dieSet: { ...job.dieSet, plugFits: { ...job.dieSet.plugFits, [contourId]: fit } },
  }),
};
