import { byPart, heightOf, passesOf, type Job } from './job';
import type { ShopValues } from './wire/cut-times';

/** What the job says about time and price. */
export const shopValues = (job: Job): ShopValues => ({
  passes: byPart((part) => passesOf(job, part)),
  heights: byPart((part) => heightOf(job, part)),
  machine: job.technology.machine,
});
