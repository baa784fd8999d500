import { clearanceToleranceOf, type InspectionSettings } from '../inspection-settings';
import type { Pair, Plan } from '../plan';
import type { Result } from '../problem';
import { compareSet, type ComparedSet } from './compare-set';
import { measuredPair, type MeasuredPair } from './measured-pair';
import { noMotion } from './motion';
import { pairClearance, type PairClearance } from './pair-clearance';

/** What measured points say about a plan. */
export interface MeasuredParts {
  /** In the order of the job's sets. */
  readonly measured: readonly Result<ComparedSet>[];
  readonly measuredPairs: readonly MeasuredPairOf[];
}

/** Everything that inspection says about a plan, for the sheets. */
export interface Inspection extends MeasuredParts {
  readonly pairs: readonly PairClearance[];
}

export interface MeasuredPairOf {
  readonly contourId: string;
  /** Names of the sets that stand for the punch and the die. */
  readonly punchSet: string;
  readonly dieSet: string;
  readonly pair: MeasuredPair;
}

/** Clearance of all pairs as cut, all measured sets, and every pair of which both members were measured. */
export function inspectionOf(plan: Plan, settings: InspectionSettings): Inspection {
  const wanted = plan.clearance.perSide;
  const tolerance = clearanceToleranceOf(settings, wanted);
  return {
    pairs: plan.pairs.flatMap((pair) => pairClearance(pair, noMotion, pair.gap, tolerance) ?? []),
    ...measuredParts(plan, settings),
  };
}

/** The measured part of it. */
export function measuredParts(plan: Plan, settings: InspectionSettings): MeasuredParts {
  const wanted = plan.clearance.perSide;
  const tolerance = clearanceToleranceOf(settings, wanted);
  const measured = settings.measured.map((set) => compareSet(plan, set, settings.profile));
  return {
    measured,
    measuredPairs: plan.pairs.flatMap((pair) => measuredPairOf(pair, measured, pair.gap, tolerance) ?? []),
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
