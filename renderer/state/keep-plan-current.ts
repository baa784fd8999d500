import type { Job } from '../../core/job';
import { jobOf } from './app-state';
import type { App } from './app-store';
import { makePlan } from './make-plan';

/** Asks for a plan whenever the job changes. Returns the way to stop that. */
export function keepPlanCurrent(app: App): () => void {
  const { store } = app;
  let asked: Job | null = null;
  const look = () => {
    const job = jobOf(store.getState());
    if (job === asked) return;
    asked = job;
    if (job) void makePlan(app, job);
  };
  look();
  return store.subscribe(look);
}
