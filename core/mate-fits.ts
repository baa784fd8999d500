import type { DieSetSettings } from './die-set-settings';
import { fitAllowance, type FitAllowance } from './die/fit-allowance';
import type { DrawingContour } from './drawing/drawing';
import { fitOnSize, sizeOf } from './fit-on-size';
import type { Job } from './job';
import { done, type Result } from './problem';

/** The fit of every contour that is used as a plug and its hole, by contour id; a class that no table has is the problem. */
export function mateFits(
  contours: readonly DrawingContour[],
  uses: Job['uses'],
  plugFit: DieSetSettings['plugFit'],
  plugFits: DieSetSettings['plugFits'],
): Result<ReadonlyMap<string, FitAllowance>> {
  const fits = new Map<string, FitAllowance>();
  for (const { id, contour } of contours) {
    if (uses[id] !== 'mate') continue;
    const allowed = fitAllowance(fitOnSize(plugFits[id] ?? plugFit, sizeOf([contour])), 'hole');
    if (!allowed.ok) return allowed;
    fits.set(id, allowed.value);
  }
  return done(fits);
}

/** By how much contours are made larger: the size shifts, and for a hole where its fit puts it. */
export const shiftsWithFits = (
  sizeShifts: Job['sizeShifts'],
  fits: ReadonlyMap<string, FitAllowance>,
): Job['sizeShifts'] => ({
  ...sizeShifts,
  ...Object.fromEntries([...fits].map(([id, { holeOffset }]) => [id, (sizeShifts[id] ?? 0) + holeOffset])),
});
