import type { JobEdit } from '../job-edit';

/** Whether the punch has passes of its own; they begin as those of the die. */
export const setPunchPasses: JobEdit<'as the die' | 'own'> = {
  id: 'set-punch-passes',
  undo: 'step',
  label: (which) =>
    which === 'own' ? 'Passes of its own for the punch' : 'Passes of the punch as of the die',
  apply: (job, which) => ({
    ...job,
    passRule: 'typed',
    punchPasses: which === 'own' ? (job.punchPasses ?? job.passes) : null,
  }),
};
