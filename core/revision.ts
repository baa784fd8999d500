import { tolerance } from './geometry/tolerance';
import type { FollowedJob } from './follow-contours';
import type { Region } from './geometry/contour';
import { carryDispositions, type Disposition } from './inspect/carry-dispositions';
import { changedPlaces, type ChangedPlace } from './inspect/changed-places';
import { measuringTargets } from './inspect/measuring-targets';
import type { Job } from './job';
import type { Plan } from './plan';
import { settingChanges, type SettingChange } from './setting-changes';

/** Two revisions: an earlier job beside the present one, or a job and what it becomes on a new drawing. */
export interface RevisionQuestion {
  readonly kind: 'earlier job' | 'new drawing';
  readonly older: Job;
  readonly newer: Job;
}

/** What a newer revision of a job changes. */
export interface Revision {
  /** The newer job; on a new drawing with what was chosen for single contours still on the same ones. */
  readonly taken: FollowedJob;
  readonly older: Region;
  readonly newer: Region;
  /** Where the drawn outlines differ, largest first. */
  readonly places: readonly ChangedPlace[];
  readonly settings: readonly SettingChange[];
  readonly dispositions: readonly Disposition[];
}

export interface PlannedJob {
  readonly job: Job;
  readonly plan: Plan;
}

/** Both drawn outlines as they lie in their drawings; what differs by less than drawing slips (`duplicate`) is no change. */
export function revisionOf(older: PlannedJob, newer: PlannedJob, lost: readonly string[]): Revision {
  const [was, is] = [outlineOf(older.plan), outlineOf(newer.plan)];
  const places = changedPlaces(was, is, tolerance.duplicate);
  return {
    taken: { job: newer.job, lost },
    older: was,
    newer: is,
    places,
    settings: settingChanges(older.job, newer.job),
    dispositions: carryDispositions(older.plan.findings, newer.plan.findings, older.job.settled, places),
  };
}

const outlineOf = (plan: Plan): Region => measuringTargets(plan)[0]?.profile ?? [];
