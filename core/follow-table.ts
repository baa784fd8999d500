import type { Job, JobPass } from './job';
import type { MemberRole } from './plan';
import { tabulatedPasses } from './wire/tabulated-passes';

/**
 * The job with the passes that its technology table has for its wire and blocks; the very same job where its passes
 * were typed. A member for which the table has none keeps its passes (a finding says so).
 */
export function followTable(job: Job): Job {
  if (job.passRule === 'typed') return job;
  const passes = fromTable(job, 'die') ?? job.passes;
  const punch = fromTable(job, 'punch') ?? job.punchPasses ?? job.passes;
  return { ...job, passes, punchPasses: samePasses(passes, punch) ? null : punch };
}

function fromTable(job: Job, role: MemberRole): JobPass[] | null {
  const found = tabulatedPasses(job.technology, job.wire.diameter, job.blocks[role]);
  return found.ok ? found.value.map((pass) => ({ ...pass, feed: null })) : null;
}

const samePasses = (a: readonly JobPass[], b: readonly JobPass[]): boolean =>
  a.length === b.length &&
  a.every((pass, k) => (Object.keys(pass) as (keyof JobPass)[]).every((key) => pass[key] === b[k]?.[key]));
