import type { InspectionSettings, MeasuredSet } from '../inspection-settings';
import type { Plan } from '../plan';
import { failed, done, type Result } from '../problem';
import { comparePoints, type Comparison } from './compare-points';
import { measuringTargets, type MeasuringTarget } from './measuring-targets';

export interface ComparedSet {
  readonly set: MeasuredSet;
  readonly target: MeasuringTarget;
  readonly comparison: Comparison;
}

/** One set of measured points against its target; a problem where the job has no such target any more. */
export function compareSet(
  plan: Plan,
  set: MeasuredSet,
  profile: InspectionSettings['profile'],
): Result<ComparedSet> {
  const target = measuringTargets(plan).find(({ id }) => id === set.target);
  if (!target) {
    return failed(
      'measured-target',
      `What "${set.name}" was measured against is not in the job any more`,
      set.target,
      'Choose what the points belong to.',
    );
  }
  if (set.points.length === 0) {
    return failed('measured-empty', `"${set.name}" has no points`, set.fileName, 'Read its list in again.');
  }
  const comparison = comparePoints(set.points, target.profile, target.material, set.fit, profile);
  return done({ set, target, comparison });
}
