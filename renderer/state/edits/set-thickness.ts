import { formatLength } from '../../../core/units';
import type { JobEdit } from '../job-edit';

/** The stock's thickness, mm. */
export const setThickness: JobEdit<number> = {
  id: 'set-thickness',
  undo: 'merge',
  label: (thickness, job) => `Stock ${formatLength(thickness, job.output.unit)} thick`,
  apply: (job, thickness) => ({ ...job, stock: { ...job.stock, thickness } }),
};
