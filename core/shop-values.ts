import { passesOf, type Job } from './job';
import type { ShopValues } from './wire/cut-times';

/** What the job says about time and price. */
export const shopValues = (job: Job): ShopValues => ({
  passes: { die: passesOf(job, 'die'), punch: passesOf(job, 'punch') },
  heights: job.blocks,
  machine: job.technology.machine,
});
