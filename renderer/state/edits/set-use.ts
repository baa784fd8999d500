import type { ContourUse } from '../../../core/job';
import type { JobEdit } from '../job-edit';

export interface UseChange {
  readonly contourId: string;
  /** Null: by the rule (outer contours blank, inner ones pierce). */
  readonly use: ContourUse | null;
}

/** What a contour is used for. */
export const setUse: JobEdit<UseChange> = {
  id: 'set-use',
  undo: 'step',
  label: ({ contourId, use }) =>
    `Contour ${contourId}: ${use === 'mate' ? 'plug and hole' : (use ?? 'by the rule')}`,
  apply: (job, { contourId, use }) => {
    const { [contourId]: _old, ...others } = job.uses;
    return { ...job, uses: use === null ? others : { ...others, [contourId]: use } };
  },
};
