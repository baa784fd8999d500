import type { Box, Point } from '../geometry/contour';
import { mmPerInch } from '../units';
import { pointsBox } from './points-box';

/**
 * The unit in which points as listed are about as large as the profile they were measured on; null where neither is,
 * or both could be.
 */
export function likelyUnit(points: readonly Point[], profile: Box): 'mm' | 'inch' | null {
  const size = diagonal(pointsBox(points));
  const wanted = diagonal(profile);
  if (size === 0 || wanted === 0) return null;
  const fits = (perUnit: number) => {
    const ratio = (size * perUnit) / wanted;
    return ratio > 1 / alike && ratio < alike;
  };
  if (fits(1)) return 'mm';
  return fits(mmPerInch) ? 'inch' : null;
}

/** Points may cover a part of the profile only; a factor of 25.4 stands out all the same. */
const alike = 2;

const diagonal = (box: Box): number => Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
