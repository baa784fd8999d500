import type { Arrangement } from './die/tool';
import type { PieceContour } from './die/stock-walls';
import type { Point } from './geometry/contour';
import { movedContour } from './geometry/moved-contour';
import { memberId } from './member-id';
import type { PartName } from './plan';
import type { UsedContour } from './used-contours';

/** A contour where the tool cuts it. */
export interface PlacedContour extends UsedContour {
  /** Stations of the strip that it lies away from the blank. */
  readonly station: number;
}

/**
 * The contours where the tool cuts them: in two stations the holes are pierced so many steps of the strip before the
 * blank, so their punches and openings stand that far up the strip; else as drawn.
 */
export function placedContours(
  used: readonly UsedContour[],
  arrangement: Arrangement,
  step: Point | null,
  stationsApart: number,
): readonly PlacedContour[] {
  const asDrawn = used.map((one) => ({ ...one, station: 0 }));
  const isBoth = used.some(({ use }) => use === 'blank') && used.some(({ use }) => use === 'pierce');
  if (arrangement !== 'two stations' || !step || !isBoth) return asDrawn;
  const motion = { turn: 0, x: -step.x * stationsApart, y: -step.y * stationsApart };
  return asDrawn.map((one) =>
    one.use === 'pierce'
      ? {
          ...one,
          contour: { ...one.contour, contour: movedContour(one.contour.contour, motion) },
          station: stationsApart,
        }
      : one,
  );
}

/** The steel that a contour's opening is cut in: in a compound tool piercing dies are openings of the blanking punch. */
export function openingPart(
  { use, contour }: UsedContour,
  blanks: ReadonlySet<string>,
  arrangement: Arrangement,
): { readonly part: PartName; readonly punchId: string | null } {
  const { parentId } = contour;
  return arrangement === 'compound' && use === 'pierce' && parentId !== null && blanks.has(parentId)
    ? { part: 'punch', punchId: memberId('blank', parentId, 'punch') }
    : { part: 'die', punchId: null };
}

/** The ids of the contours that are blanked. */
export const blanksOf = (used: readonly UsedContour[]): ReadonlySet<string> =>
  new Set(used.flatMap(({ use, contour }) => (use === 'blank' ? [contour.id] : [])));

/** The contours as the die set's rules look at them: what the stock is cut by. */
export const pieceContours = (used: readonly UsedContour[]): readonly PieceContour[] =>
  used.flatMap(({ contour: { id, contour, parentId }, use }) =>
    use === 'mate' ? [] : [{ contourId: id, use, contour, parentId }],
  );
