import type { JobPass } from '../../../core/job';
import type { MemberRole } from '../../../core/plan';
import { formatLength } from '../../../core/units';
import type { JobEdit } from '../job-edit';
import { withPass } from '../pass-list';
import { withPassesOf } from './passes-of-member';

/** The spark gap of the last pass, mm: of both members, or of one that has its own passes. */
export const setSparkGap: JobEdit<{ readonly role: MemberRole | 'both'; readonly sparkGap: number }> = {
  id: 'set-spark-gap',
  undo: 'merge',
  part: ({ role }) => role,
  label: ({ sparkGap }, job) => `Spark gap ${formatLength(sparkGap, job.output.unit)}`,
  apply: (job, { role, sparkGap }) => {
    const change = (passes: readonly JobPass[]) => withPass(passes, passes.length - 1, { sparkGap });
    const die = role === 'punch' ? job : withPassesOf(job, 'die', change);
    return role === 'die' || job.punchPasses === null ? die : withPassesOf(die, 'punch', change);
  },
};
