import { followTable } from '../../../core/follow-table';
import type { MemberRole } from '../../../core/plan';
import { formatLength } from '../../../core/units';
import type { JobEdit } from '../job-edit';

/** The height of the block that a member is cut from, mm. */
export const setBlock: JobEdit<{ readonly role: MemberRole; readonly height: number }> = {
  id: 'set-block',
  undo: 'merge',
  part: ({ role }) => role,
  label: ({ role, height }, job) =>
    `${role === 'die' ? 'Die' : 'Punch'} ${formatLength(height, job.output.unit)} high`,
  apply: (job, { role, height }) => followTable({ ...job, blocks: { ...job.blocks, [role]: height } }),
};
