import type { JobPass } from '../../../core/job';
import type { PartName } from '../../../core/plan';
import type { JobEdit } from '../job-edit';
import { withPass } from '../pass-list';
import { passName } from '../pass-name';
import { withPassesOf } from './passes-of-member';

export interface PassChange {
  readonly part: PartName;
  readonly pass: number;
  readonly change: Partial<JobPass>;
}

/** One value of one pass. */
export const setPass: JobEdit<PassChange> = {
  id: 'set-pass',
  undo: 'merge',
  part: ({ part, pass, change }) => `${part}/${pass}/${Object.keys(change).join()}`,
  label: ({ pass, change }) => `${changeName(change)} of the ${passName(pass).toLowerCase()}`,
  apply: (job, { part, pass, change }) => withPassesOf(job, part, (passes) => withPass(passes, pass, change)),
};

/** What a change of a pass is called. */
export function changeName(change: Partial<JobPass>): string {
  const [key] = Object.keys(change) as (keyof JobPass)[];
  return names[key ?? 'sparkGap'];
}

const names: Readonly<Record<keyof JobPass, string>> = {
  sparkGap: 'Spark gap',
  stockLeft: 'Stock left',
  rate: 'Rate',
  roughness: 'Roughness',
  wireSpeed: 'Wire speed',
  feed: 'Feed',
};
