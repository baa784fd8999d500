import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { Contour, Region } from '../geometry/contour';
import { contourBox } from '../geometry/contour-measures';
import { sayLength } from '../say';
import { asCutRegion } from '../wire/as-cut';
import { extent, unreachedPlaces } from './unreached-places';

export interface SizeShiftQuery {
  readonly contourId: string;
  readonly drawn: Contour;
  readonly sizeShift: number;
  /** The drawn contour moved by the shift. */
  readonly sized: Region;
}

/** A contour that its size shift swallows or splits, and every feature that it loses by it: each is a stop. */
export function sizeShiftFindings(query: SizeShiftQuery): readonly Finding[] {
  const { drawn, sizeShift, sized } = query;
  if (sizeShift === 0) return [];
  const shift = sayLength(Math.abs(sizeShift));
  if (sized.length !== 1) {
    const box = contourBox(drawn);
    const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, reach: extent(drawn) / 2 };
    const becomes = sized.length === 0 ? 'vanishes' : `falls into ${sized.length} parts`;
    return [lost(query, `Moved by ${shift} on each side, contour ${query.contourId} ${becomes}.`, middle)];
  }
  // A disc of the shift rolls along the contour on the side that it moves to.
  const role = sizeShift > 0 ? 'punch' : 'die';
  const radius = Math.abs(sizeShift);
  return unreachedPlaces([drawn], asCutRegion([drawn], role, radius), role, radius)
    .filter(({ shape }) => shape.kind === 'slot')
    .map(({ shape, outline }) =>
      lost(query, `A feature here is narrower than twice the size shift of ${shift} and closes.`, {
        ...shape.at,
        reach: Math.max(extent(outline), 10 * radius),
      }),
    );
}

function lost(
  { contourId, sizeShift }: SizeShiftQuery,
  message: string,
  place: { x: number; y: number; reach: number },
): Finding {
  return findingOf({
    code: 'size-shift-too-large',
    weight: 'stop',
    title: 'The size shift is larger than a feature',
    message,
    place,
    contourId,
    numbers: [{ label: 'size shift', value: sizeShift, kind: 'length' }],
    cures: [{ kind: 'other', say: 'Choose a smaller size shift for this contour, or none.' }],
  });
}
