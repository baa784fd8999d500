import type { Contour } from '../../core/geometry/contour';
import { families, randomContour, seeded } from './random-contours';

export interface GeometryCase {
  readonly family: string;
  readonly seed: number;
  readonly contour: Contour;
  readonly distance: number;
}

export const geometryFamilies: readonly string[] = Object.keys(families);

/** The case of a seed: a contour of the family and an offset, half of them where rounding decides most. */
export function geometryCase(family: string, seed: number): GeometryCase {
  const random = seeded(seed * 7919 + family.length);
  const contour = randomContour(family, random);
  const distances = [-0.5, 0.5, -0.25, 0.25, -0.147, 0.15, (random() - 0.5) * 4, (random() - 0.5) * 0.4];
  const distance = distances[Math.floor(random() * distances.length)] as number;
  return { family, seed, contour, distance };
}
