import { clearanceToleranceOf, type InspectionSettings } from '../inspection-settings';
import type { Pair, Plan } from '../plan';
import type { Result } from '../problem';
import { compareSet, type ComparedSet } from './compare-set';
import { measuredPair, type MeasuredPair } from './measured-pair';
import { noMotion } from './motion';
import { pairClearance, type PairClearance } from './pair-clearance';

/** Everything that inspection says about a plan, for the window and the sheets. */
export interface Inspection {
  readonly tolerance: number;
  readonly pairs: readonly PairClearance[];
  /** In the order of the job's sets. */
  readonly measured: readonly Result<ComparedSet>[];
  readonly measuredPairs: readonly MeasuredPairOf[];
}

export interface MeasuredPairOf {
  readonly contourId: string;
  /** Names of the sets that stand for the punch and the die. */
  readonly punchSet: string;
  readonly dieSet: string;
  readonly pair: MeasuredPair;
}

/** Clearance of all pairs, all measured sets, and every pair of which both members were measured. */
export function inspectionOf(plan: Plan, settings: InspectionSettings): Inspection {
  const wanted = plan.clearance.perSide;
  const tolerance = clearanceToleranceOf(settings, wanted);
  const measured = settings.measured.map((set) => compareSet(plan, set, settings.profile));
  return {
    tolerance,
    pairs: plan.pairs.flatMap((pair) => pairClearance(pair, noMotion, wanted, tolerance) ?? []),
    measured,
    measuredPairs: plan.pairs.flatMap((pair) => measuredPairOf(pair, measured, wanted, tolerance) ?? []),
  };
}

/** The last set of each member counts. */
function measuredPairOf(
  { contourId, punch, die }: Pair,
  measured: readonly Result<ComparedSet>[],
  wanted: number,
  tolerance: number,
): MeasuredPairOf | null {
  const setOf = (id: string) =>
    measured.flatMap((set) => (set.ok && set.value.target.id === id ? [set.value] : [])).at(-1);
  const [ofPunch, ofDie] = [setOf(punch.id), setOf(die.id)];
  if (!ofPunch || !ofDie) return null;
  const pair = measuredPair(
    { designed: punch.designed, comparison: ofPunch.comparison },
    { designed: die.designed, comparison: ofDie.comparison },
    wanted,
    tolerance,
  );
  return pair && { contourId, punchSet: ofPunch.set.name, dieSet: ofDie.set.name, pair };
}
