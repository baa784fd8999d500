import type { Finding } from '../../core/finding';
import type { Job } from '../../core/job';
import { jobOf, type AppState } from './app-state';

/** Whether a finding still stands between the job and its release. */
export const isOpen = (finding: Finding, job: Job): boolean =>
  finding.weight === 'stop' || (finding.weight === 'decide' && !job.settled[finding.key]);

/** The findings that still wait for someone, worst first. */
export function openFindings(state: AppState): readonly Finding[] {
  const job = jobOf(state);
  if (!state.made || !job) return [];
  return state.made.plan.findings.filter((finding) => isOpen(finding, job));
}
