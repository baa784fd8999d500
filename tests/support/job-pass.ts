import type { JobPass } from '../../core/job';

/** A pass of a job with what the test doesn't look at filled in. */
export const jobPass = (pass: Partial<JobPass>): JobPass => ({
  sparkGap: 0.025,
  stockLeft: 0,
  rate: 100,
  roughness: null,
  wireSpeed: 8,
  feed: null,
  ...pass,
});
