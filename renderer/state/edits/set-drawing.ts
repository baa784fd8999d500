import type { Job } from '../../../core/job';
import { formatLength } from '../../../core/units';
import type { JobEdit } from '../job-edit';

export type DrawingChange = Partial<Pick<Job['drawing'], 'unit' | 'gapTolerance'>>;

/** How the drawing is read: its unit, and how wide a gap is closed. */
export const setDrawing: JobEdit<DrawingChange> = {
  id: 'set-drawing',
  undo: 'step',
  label: (change, job) => {
    if (change.gapTolerance === undefined) return `Drawing in ${change.unit ?? 'the unit it states'}`;
    return `Close gaps up to ${formatLength(change.gapTolerance, job.output.unit)}`;
  },
  apply: (job, change) => ({ ...job, drawing: { ...job.drawing, ...change } }),
};
