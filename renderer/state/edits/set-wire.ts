import { followTable } from '../../../core/follow-table';
import { formatLength } from '../../../core/units';
import type { JobEdit } from '../job-edit';

/** The wire's diameter, mm. */
export const setWire: JobEdit<number> = {
  id: 'set-wire',
  undo: 'merge',
  label: (diameter, job) => `Wire ${formatLength(diameter, job.output.unit)}`,
  apply: (job, diameter) => followTable({ ...job, wire: { diameter } }),
};
