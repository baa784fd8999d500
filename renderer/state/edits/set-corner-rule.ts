import type { CornerRule } from '../../../core/die/corner-rules';
import type { MemberRole } from '../../../core/plan';
import { formatLength, type DisplayUnit } from '../../../core/units';
import type { JobEdit } from '../job-edit';

export interface CornerRuleChange {
  readonly role: MemberRole;
  readonly side: 'outside' | 'inside';
  readonly rule: CornerRule;
}

/** What becomes of all outside or all inside corners of a member, but for those with a choice of their own. */
export const setCornerRule: JobEdit<CornerRuleChange> = {
  id: 'set-corner-rule',
  undo: 'merge',
  part: ({ role, side }) => `${role}/${side}`,
  label: ({ role, side, rule }, job) =>
    `${role === 'die' ? 'Die' : 'Punch'} ${side} corners ${cornerRuleWords(rule, job.output.unit)}`,
  apply: (job, { role, side, rule }) => ({
    ...job,
    corners: { ...job.corners, [role]: { ...job.corners[role], [side]: rule } },
  }),
};

/** "as drawn", "matched", "0.2 mm". */
export function cornerRuleWords(rule: CornerRule, unit: DisplayUnit): string {
  switch (rule.rule) {
    case 'as drawn':
      return 'as drawn';
    case 'match':
      return 'matched';
    case 'radius':
      return formatLength(rule.radius, unit);
  }
}
