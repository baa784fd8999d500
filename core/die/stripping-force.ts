import type { Region } from '../geometry/contour';
import { contourArea, contourLength } from '../geometry/contour-measures';

export const strippingSource = 'Schuler, Metal Forming Handbook (Springer 1998)';

/** Range of the stripping force as a share of the cutting force. */
export interface StrippingShare {
  readonly from: number;
  readonly to: number;
}

/** The two published points: by hole diameter over stock thickness. */
const wide = { ratio: 10, from: 0.03, to: 0.05 } as const;
const narrow = { ratio: 2, from: 0.1, to: 0.2 } as const;

/**
 * Stripping force as a share of the cutting force: 3 to 5 % where the hole is about ten stock thicknesses wide, 10 to
 * 20 % where it is two (Schuler, Metal Forming Handbook, 1998). Between them a straight line in that ratio, beyond them
 * the nearer of the two.
 */
export function strippingShare(width: number, thickness: number): StrippingShare {
  const ratio = Math.min(wide.ratio, Math.max(narrow.ratio, width / thickness));
  const part = (wide.ratio - ratio) / (wide.ratio - narrow.ratio);
  return {
    from: wide.from + part * (narrow.from - wide.from),
    to: wide.to + part * (narrow.to - wide.to),
  };
}

/** Width of a contour as a hole's diameter: four times its area over its length, which is the diameter of a circle. */
export function equivalentDiameter(region: Region): number {
  const length = region.reduce((sum, contour) => sum + contourLength(contour), 0);
  const area = region.reduce((sum, contour) => sum + contourArea(contour), 0);
  return length > 0 ? (4 * area) / length : 0;
}
