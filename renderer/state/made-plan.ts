import type { Job } from '../../core/job';
import type { Plan } from '../../core/plan';

/** A plan with the job that it was made from. */
export interface MadePlan {
  readonly job: Job;
  readonly plan: Plan;
}
