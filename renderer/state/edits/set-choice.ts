import type { Job } from '../../../core/job';
import type { JobEdit } from '../job-edit';

export type ChoiceChange = Partial<Pick<Job['drawing']['choice'], 'layers' | 'colours'>>;

/** Which layers or colours of the drawing are taken; null: all that are shown. */
export const setChoice: JobEdit<ChoiceChange> = {
  id: 'set-choice',
  undo: 'step',
  label: ({ layers, colours }) =>
    layers === undefined ? words('colour', colours?.length ?? null) : words('layer', layers?.length ?? null),
  apply: (job, change) => ({
    ...job,
    drawing: { ...job.drawing, choice: { ...job.drawing.choice, ...change } },
  }),
};

function words(what: string, count: number | null): string {
  if (count === null) return `Take all ${what}s that are shown`;
  return `Take ${count} ${what}${count === 1 ? '' : 's'}`;
}
