import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { Point } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import { sayLength } from '../say';

/** A toleranced length of the drawing as far as it concerns its contour's size. */
export interface TolerancedLength {
  readonly kind: string;
  readonly from: Point;
  readonly to: Point;
  readonly nominal: number;
  readonly tolerance: { readonly plus: number; readonly minus: number } | null;
  /** By how much it grows for each mm that its contour grows on each side. */
  readonly growth: number;
  /** What puts it into the middle of its tolerance. */
  readonly sizeShift: number;
  readonly contourId: string | null;
}

/**
 * One finding for each stated tolerance whose middle is not the size that the contour is made to: a decision where it
 * is made to a limit or beyond, since half of what is cut would then be out, a note otherwise. Gone once the contour has
 * the size shift that is offered.
 */
export function toleranceFindings(
  lengths: readonly TolerancedLength[],
  sizeShifts: Readonly<Record<string, number>>,
): readonly Finding[] {
  return lengths.flatMap((length) => {
    const { contourId, tolerance: stated, growth } = length;
    if (contourId === null || stated === null || growth === 0) return [];
    const present = sizeShifts[contourId] ?? 0;
    const off = Math.abs((stated.plus + stated.minus) / 2 - growth * present);
    return off <= tolerance.samePoint ? [] : [offside({ ...length, contourId, stated, present, off })];
  });
}

interface Offside extends TolerancedLength {
  readonly contourId: string;
  readonly stated: { readonly plus: number; readonly minus: number };
  readonly present: number;
  /** How far the dimension is from the middle of its tolerance, mm. */
  readonly off: number;
}

function offside({ kind, from, to, nominal, contourId, stated, sizeShift, present, off }: Offside): Finding {
  const middle = nominal + (stated.plus + stated.minus) / 2;
  const isAtLimit = off >= (stated.plus - stated.minus) / 2 - tolerance.samePoint;
  const made = present === 0 ? 'as drawn' : `with a size shift of ${sayLength(present)}`;
  return findingOf({
    code: 'tolerance-offside',
    weight: isAtLimit ? 'decide' : 'note',
    title: isAtLimit ? 'Made to the limit of a tolerance' : 'Not in the middle of a tolerance',
    message:
      `The ${kind} of ${sayLength(nominal)} on contour ${contourId} has ${signed(stated.plus)} and ` +
      `${signed(stated.minus)}; its middle is ${sayLength(middle)}, and ${made} it is ${sayLength(off)} off that.`,
    place: {
      x: (from.x + to.x) / 2,
      y: (from.y + to.y) / 2,
      reach: Math.max(1, Math.hypot(to.x - from.x, to.y - from.y) / 2),
    },
    contourId,
    numbers: [
      { label: 'upper deviation', value: stated.plus, kind: 'length' },
      { label: 'lower deviation', value: stated.minus, kind: 'length' },
      { label: 'size shift offered', value: sizeShift, kind: 'length' },
      { label: 'size shift now', value: present, kind: 'length' },
    ],
    cures: [
      {
        kind: 'size-shift',
        contourId,
        sizeShift,
        say: `Shift the size of ${contourId} by ${sayLength(sizeShift)} per side, to the middle of the tolerance.`,
      },
    ],
  });
}

const signed = (mm: number): string => `${mm > 0 ? '+' : ''}${sayLength(mm)}`;
