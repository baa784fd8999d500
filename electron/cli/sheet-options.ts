import { partTarget } from '../../core/inspect/measuring-targets';
import type { SheetSettings } from '../../core/inspection-settings';
import type { Job } from '../../core/job';
import { magnifications } from '../../core/output/magnifications';
import { done, failed, type Result } from '../../core/problem';

type Change = (job: Job, text: string) => Result<Job>;

/** What the sheets state, and which overlay charts are written with them. */
export const sheetOptions: Readonly<Record<'revision' | 'date' | 'page' | 'charts', Change>> = {
  revision: (job, revision) => withSheet(job, { revision }),
  date: (job, date) => withSheet(job, { date }),
  page: (job, text) => {
    const page = (['A4', 'letter'] as const).find((name) => name.toLowerCase() === text.toLowerCase());
    return page
      ? withSheet(job, { page })
      : failed('option-value', `"${text}" is no page size`, '--page', 'Use A4 or letter.');
  },
  charts: (job, text) => {
    const times = text.split(',').map(Number);
    const wrong = times.findIndex((value) => !magnifications.some((known) => known === value));
    if (wrong >= 0)
      return failed(
        'option-value',
        `"${text.split(',')[wrong] ?? ''}" is no magnification of an overlay chart`,
        '--charts',
        `Use some of ${magnifications.join(', ')}, with commas between.`,
      );
    return withSheet(job, {
      charts: times.map((magnification) => ({ target: partTarget, magnification })),
    });
  },
};

const withSheet = (job: Job, change: Partial<SheetSettings>): Result<Job> =>
  done({ ...job, sheet: { ...job.sheet, ...change } });
