import type { Arrangement } from './die/tool';
import type { PieceContour } from './die/stock-walls';
import type { Point } from './geometry/contour';
import { movedContour } from './geometry/moved-contour';
import type { UsedContour } from './used-contours';

/**
 * The contours where the tool cuts them: in two stations the holes are pierced so many steps of the strip before the
 * blank, so their punches and openings stand that far up the strip; else as drawn.
 */
export function placedContours(
  used: readonly UsedContour[],
  arrangement: Arrangement,
  step: Point | null,
  stationsApart: number,
): readonly UsedContour[] {
  const isBoth = used.some(({ use }) => use === 'blank') && used.some(({ use }) => use === 'pierce');
  if (arrangement !== 'two stations' || !step || !isBoth) return used;
  const motion = { turn: 0, x: -step.x * stationsApart, y: -step.y * stationsApart };
  return used.map((one) =>
    one.use === 'pierce'
      ? { ...one, contour: { ...one.contour, contour: movedContour(one.contour.contour, motion) } }
      : one,
  );
}

/** The contours as the die set's rules look at them. */
export const pieceContours = (used: readonly UsedContour[]): readonly PieceContour[] =>
  used.map(({ contour: { id, contour, parentId }, use }) => ({ contourId: id, use, contour, parentId }));
