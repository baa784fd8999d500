import type { DrawingContour } from './drawing/drawing';
import type { Finding } from './finding';
import type { Job } from './job';
import type { Use } from './plan';
import type { sizedContour } from './sized-contour';

/** A contour that members are made of, at its size, and what it is used for. */
export interface UsedContour {
  readonly contour: DrawingContour;
  readonly use: Use;
  /** What the size shift did to it. */
  readonly findings: readonly Finding[];
}

/** The contours that members are made of: outer ones blank, inner ones pierce, unless a person said otherwise. */
export function usedContours(
  contours: readonly DrawingContour[],
  uses: Job['uses'],
  sizeShifts: Job['sizeShifts'],
  sized: typeof sizedContour,
): readonly UsedContour[] {
  return contours.flatMap((contour) => {
    const use = uses[contour.id] ?? (contour.depth % 2 === 0 ? 'blank' : 'pierce');
    return use === 'leave out' ? [] : [{ ...sized(contour, sizeShifts[contour.id] ?? 0), use }];
  });
}
