import type { Job } from '../../../core/job';
import { formatLength } from '../../../core/units';
import type { JobEdit } from '../job-edit';

/** The clearance rule: from a table, by formula, typed, or a share of the thickness. */
export const setClearance: JobEdit<Job['clearance']> = {
  id: 'set-clearance',
  undo: 'merge',
  part: (clearance) => clearance.rule,
  label: (clearance, job) => {
    switch (clearance.rule) {
      case 'table':
        return 'Clearance from the stock table';
      case 'edge type':
        return `Clearance for edge type ${clearance.type}`;
      case 'square root':
        return 'Clearance by the square-root formula';
      case 'typed':
        return `Clearance ${formatLength(clearance.perSide, job.output.unit)} per side`;
      case 'percent':
        return `Clearance ${clearance.percent} % of the thickness`;
    }
  },
  apply: (job, clearance) => ({ ...job, clearance }),
};
