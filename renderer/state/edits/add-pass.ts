import type { JobEdit } from '../job-edit';

/**
 * One more skim at the end. It takes over the last pass's numbers; the pass before it then leaves the stock that the
 * last one took (0.005 mm after a rough cut alone: skims of 0.003–0.015 mm are common practice).
 */
export const addPass: JobEdit<void> = {
  id: 'add-pass',
  undo: 'step',
  label: () => 'Add a skim',
  apply: (job) => {
    const last = job.passes.at(-1);
    if (!last) return job;
    const before = job.passes.at(-2);
    const stockLeft = before ? before.stockLeft / 2 : firstSkimStock;
    return {
      ...job,
      passRule: 'typed',
      passes: [...job.passes.slice(0, -1), { ...last, stockLeft }, { ...last, stockLeft: 0 }],
    };
  },
};

const firstSkimStock = 0.005;
