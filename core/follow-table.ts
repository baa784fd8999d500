import { heightOf, type Job, type JobPass } from './job';
import type { PartName } from './plan';
import { tabulatedPasses } from './wire/tabulated-passes';

/**
 * The job with the passes that its technology table has for its wire and blocks; the very same job where its passes
 * were typed. A part for which the table has none keeps its passes (a finding says so).
 */
export function followTable(job: Job): Job {
  if (job.passRule === 'typed') return job;
  const passes = fromTable(job, 'die') ?? job.passes;
  const own = (part: PartName, before: JobPass[] | null): JobPass[] | null => {
    const found = fromTable(job, part) ?? before ?? job.passes;
    return samePasses(passes, found) ? null : found;
  };
  const { stripper, retainer } = job.dieSet;
  return {
    ...job,
    passes,
    punchPasses: own('punch', job.punchPasses),
    dieSet: {
      ...job.dieSet,
      stripper: { ...stripper, passes: own('stripper', stripper.passes) },
      retainer: { ...retainer, passes: own('retainer', retainer.passes) },
    },
  };
}

function fromTable(job: Job, part: PartName): JobPass[] | null {
  const found = tabulatedPasses(job.technology, job.wire.diameter, heightOf(job, part));
  return found.ok ? found.value.map((pass) => ({ ...pass, feed: null })) : null;
}

const samePasses = (a: readonly JobPass[], b: readonly JobPass[]): boolean =>
  a.length === b.length &&
  a.every((pass, k) => (Object.keys(pass) as (keyof JobPass)[]).every((key) => pass[key] === b[k]?.[key]));
