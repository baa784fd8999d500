import { describe, expect, it } from 'vitest';
import { newDieSet } from '../../core/die-set-settings';
import { readJobFile, writeJobFile } from '../../core/job-file';
import { jobOn } from '../support/dxf-of';
import { circle } from '../support/shapes';

describe('jobs saved before', () => {
  const saved = (change: (dieSet: Record<string, unknown>, job: Record<string, unknown>) => void): string => {
    const job = JSON.parse(writeJobFile(jobOn([circle(10)]))) as { dieSet: Record<string, unknown> };
    change(job.dieSet, job);
    return JSON.stringify(job);
  };

  it('there was a die set load with the starting one', () => {
    const read = readJobFile(
      saved((_, job) => {
        delete job['dieSet'];
      }),
    );
    expect(read.ok && read.value.dieSet).toEqual(newDieSet);
  });

  it('plates had passes of their own, and mates fits, load with none', () => {
    const read = readJobFile(
      saved((dieSet) => {
        delete dieSet['plugFits'];
        for (const plate of ['stripper', 'retainer'])
          delete (dieSet[plate] as Record<string, unknown>)['passes'];
      }),
    );
    expect(read.ok && read.value.dieSet).toEqual(newDieSet);
  });
});
