import { isOpen } from '../../core/assemble-plan';
import type { Finding } from '../../core/finding';
import { jobOf, type AppState } from './app-state';

/** The findings that still wait for someone, worst first. */
export function openFindings(state: AppState): readonly Finding[] {
  const job = jobOf(state);
  if (!state.made || !job) return [];
  return state.made.plan.findings.filter((finding) => isOpen(finding, job));
}
