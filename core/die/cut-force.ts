import type { Contour } from '../geometry/contour';
import { contourLength } from '../geometry/contour-measures';
import { cuttingForce, cuttingForceFromTensile } from './cutting-force';
import { equivalentDiameter, strippingShare, type StrippingShare } from './stripping-force';
import type { StockMaterial } from './stock-materials';

export type ForceRule = 'shear strength' | 'tensile strength';

/** The force of one contour's cut, N. */
export interface CutForce {
  readonly contourId: string;
  readonly use: 'blank' | 'pierce';
  /** Length of the cut, mm. */
  readonly length: number;
  /** Diameter of the round hole that the contour stands for, mm. */
  readonly width: number;
  /** By both published forms; null where the stock has no such strength. */
  readonly byShear: number | null;
  readonly byTensile: number | null;
  /** By the job's rule, or by the other one where the first has no number; null where neither has. */
  readonly force: number | null;
  readonly stripping: StrippingShare;
}

export interface CutForceQuery {
  readonly contourId: string;
  readonly use: 'blank' | 'pierce';
  readonly contour: Contour;
  readonly thickness: number;
  readonly material: StockMaterial | undefined;
  readonly by: ForceRule;
}

/** F = L·t·τ (Groover, chapter 20) and F = 0.7·t·L·UTS (Kalpakjian & Schmid, eq. 16.1), sharp edges. */
export function cutForce({ contourId, use, contour, thickness, material, by }: CutForceQuery): CutForce {
  const length = contourLength(contour);
  const width = equivalentDiameter([contour]);
  const shear = material?.shearStrength?.value;
  const tensile = material?.tensileStrength?.value;
  const byShear = shear === undefined ? null : cuttingForce(length, thickness, shear);
  const byTensile = tensile === undefined ? null : cuttingForceFromTensile(length, thickness, tensile);
  return {
    contourId,
    use,
    length,
    width,
    byShear,
    byTensile,
    force: by === 'shear strength' ? (byShear ?? byTensile) : (byTensile ?? byShear),
    stripping: strippingShare(width, thickness),
  };
}
