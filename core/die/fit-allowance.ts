import { done, failed, type Result } from '../problem';
import { isoLimits } from './iso-limits';

/** How a plug sits in its hole: a typed allowance per side (negative for a press fit), or ISO 286 classes. */
export type FitRule =
  | { readonly rule: 'allowance'; readonly perSide: number }
  | { readonly rule: 'iso'; readonly hole: string; readonly shaft: string; readonly nominal: number };

export type FitKind = 'slip' | 'transition' | 'press';

/** What a fit comes to, mm per side; gaps are negative where the plug is larger than the hole. */
export interface FitAllowance {
  /** By how much the hole and the plug lie outside the nominal contour: the middle of their limits. */
  readonly holeOffset: number;
  readonly plugOffset: number;
  /** Hole less plug at the middle of the limits, and at their ends. */
  readonly gap: number;
  readonly leastGap: number;
  readonly greatestGap: number;
  readonly kind: FitKind;
  /** Where the number comes from, for the screen and the sheet. */
  readonly reason: string;
}

/**
 * The gap per side between plug and hole. Of ISO classes both members are made to the middle of their limits (half of
 * a deviation is on either side). `from` says whose contour is given when the allowance is typed: the other one takes it.
 * Example: H7/g6 at 30 mm: gap 0.012 per side in the middle, 0.0035 to 0.0205.
 */
export function fitAllowance(fit: FitRule, from: 'hole' | 'plug'): Result<FitAllowance> {
  if (fit.rule === 'allowance') return typedAllowance(fit.perSide, from);
  const hole = isoLimits(fit.hole, fit.nominal);
  if (!hole.ok) return hole;
  const shaft = isoLimits(fit.shaft, fit.nominal);
  if (!shaft.ok) return shaft;
  if (fit.hole !== fit.hole.toUpperCase() || fit.shaft !== fit.shaft.toLowerCase()) {
    return failed(
      'fit-class-swapped',
      `${fit.hole}/${fit.shaft} is no fit of a hole and a shaft`,
      'fit',
      'Give the hole a capital letter and the shaft a small one, such as H7/g6.',
    );
  }
  const holeOffset = (hole.value.lower + hole.value.upper) / 4;
  const plugOffset = (shaft.value.lower + shaft.value.upper) / 4;
  const leastGap = (hole.value.lower - shaft.value.upper) / 2;
  const greatestGap = (hole.value.upper - shaft.value.lower) / 2;
  return done({
    holeOffset,
    plugOffset,
    gap: holeOffset - plugOffset,
    leastGap,
    greatestGap,
    kind: kindOf(leastGap, greatestGap),
    reason: `${fit.hole}/${fit.shaft} at ${fit.nominal} mm, both in the middle of their limits (ISO 286-1)`,
  });
}

function typedAllowance(perSide: number, from: 'hole' | 'plug'): Result<FitAllowance> {
  return done({
    holeOffset: from === 'plug' ? perSide : 0,
    plugOffset: from === 'plug' || perSide === 0 ? 0 : -perSide,
    gap: perSide,
    leastGap: perSide,
    greatestGap: perSide,
    kind: kindOf(perSide, perSide),
    reason: 'allowance typed',
  });
}

/** ISO 286-1: clearance where the hole is never smaller than the shaft, interference where it is never larger. */
function kindOf(least: number, greatest: number): FitKind {
  if (least >= 0) return 'slip';
  return greatest <= 0 ? 'press' : 'transition';
}
