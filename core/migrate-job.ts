import { newCorners, type CornerRule, type CornerRules } from './die/corner-rules';

/**
 * A job file as the present schema reads it: what older versions of the program wrote under other names gets its
 * present ones. Anything else, a job that is none included, comes back as it is, for the schema to judge.
 */
export function migrateJob(job: unknown): unknown {
  return isObject(job) && !('corners' in job) ? withCorners(job) : job;
}

/** The corners of all contours were once two words: whether each member's outside corners matched the other's fillets. */
function withCorners({ punchCorners, dieCorners, ...job }: Record<string, unknown>): Record<string, unknown> {
  const corners: CornerRules = {
    ...newCorners,
    punch: { ...newCorners.punch, outside: ruleOf(punchCorners, 'match the die') },
    die: { ...newCorners.die, outside: ruleOf(dieCorners, 'match the punch') },
  };
  return { ...job, corners };
}

const ruleOf = (words: unknown, matching: string): CornerRule => ({
  rule: words === matching ? 'match' : 'as drawn',
});

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
