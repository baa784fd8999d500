import type { JobEdit } from '../job-edit';

export interface ContourChoice {
  readonly contourId: string;
  /** Null: as the rule has it. */
  readonly choice: 'take' | 'leave out' | null;
}

/** Takes a closed contour as an edge of the part, or leaves it out. */
export const takeContour: JobEdit<ContourChoice> = {
  id: 'take-contour',
  undo: 'step',
  label: ({ contourId, choice }) =>
    choice === null ? `Contour ${contourId}: by the rule` : `Contour ${contourId}: ${choice}`,
  apply: (job, { contourId, choice }) => {
    const { [contourId]: _old, ...others } = job.drawing.choice.contours;
    const contours = choice === null ? others : { ...others, [contourId]: choice };
    return { ...job, drawing: { ...job.drawing, choice: { ...job.drawing.choice, contours } } };
  },
};
