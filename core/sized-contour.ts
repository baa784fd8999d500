import { sizeShiftFindings } from './check/size-shift-findings';
import { sizeContour } from './die/size-contour';
import type { DrawingContour } from './drawing/drawing';
import type { Finding } from './finding';

export interface SizedContour {
  readonly contour: DrawingContour;
  readonly findings: readonly Finding[];
}

/**
 * A contour of the drawing with its size shift: what every member of it is made from. One that the shift swallows or
 * splits stays as drawn, under a stop.
 */
export function sizedContour(contour: DrawingContour, sizeShift: number): SizedContour {
  if (sizeShift === 0) return { contour, findings: [] };
  const sized = sizeContour(contour.contour, sizeShift);
  const [loop, ...others] = sized;
  const findings = sizeShiftFindings({ contourId: contour.id, drawn: contour.contour, sizeShift, sized });
  return { contour: loop && others.length === 0 ? { ...contour, contour: loop } : contour, findings };
}
