import type { FitSettings } from './die-set-settings';
import type { FitRule } from './die/fit-allowance';
import type { Region } from './geometry/contour';
import { boxAround, contourBox } from './geometry/contour-measures';

/** A fit with its nominal size: the typed one, or the contour's own. */
export const fitOnSize = (fit: FitSettings, size: number): FitRule =>
  fit.rule === 'iso' ? { ...fit, nominal: fit.nominal ?? size } : fit;

/** The longer side of what is fitted, to a hundredth, mm: the nominal size where none is typed. */
export function sizeOf(region: Region): number {
  const box = region.map(contourBox).reduce(boxAround);
  return Math.round(100 * Math.max(box.maxX - box.minX, box.maxY - box.minY)) / 100;
}
