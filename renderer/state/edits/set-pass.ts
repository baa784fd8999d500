import type { JobPass } from '../../../core/job';
import { passName } from '../pass-name';
import type { JobEdit } from '../job-edit';

export interface PassChange {
  readonly pass: number;
  readonly change: Partial<JobPass>;
}

/** Spark gap, stock left or feed of one pass. */
export const setPass: JobEdit<PassChange> = {
  id: 'set-pass',
  undo: 'merge',
  part: ({ pass, change }) => `${pass}/${Object.keys(change).join()}`,
  label: ({ pass, change }) => `${changeNames(change)} of the ${passName(pass).toLowerCase()}`,
  apply: (job, { pass, change }) => ({
    ...job,
    passRule: 'typed',
    passes: job.passes.map((old, index) => (index === pass ? { ...old, ...change } : old)),
  }),
};

function changeNames(change: Partial<JobPass>): string {
  if (change.sparkGap !== undefined) return 'Spark gap';
  return change.stockLeft !== undefined ? 'Stock left' : 'Feed';
}
