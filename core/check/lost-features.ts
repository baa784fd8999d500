import type { Finding } from '../finding';
import type { Contour, Region } from '../geometry/contour';
import { contourBox } from '../geometry/contour-measures';
import { asCutRegion } from '../wire/as-cut';
import { findingOf } from '../finding-of';
import { sayLength } from '../say';
import { extent, unreachedPlaces } from './unreached-places';
import type { Use } from '../plan';

export interface ClearanceQuery {
  readonly contourId: string;
  readonly use: Use;
  readonly drawn: Contour;
  /** The designed contours of the member that takes the clearance: the punch of a blank, the die of a hole. */
  readonly designed: Region;
  readonly memberId: string;
  readonly clearance: number;
}

/** A contour that the clearance swallows or splits, or a feature narrower than twice the clearance that the member loses. */
export function lostFeatures(query: ClearanceQuery): readonly Finding[] {
  if (query.designed.length !== 1) return [lostContour(query)];
  // A plug that presses is larger than its hole: it loses nothing.
  return query.clearance > 0 ? narrowFeatures(query) : [];
}

function narrowFeatures(query: ClearanceQuery): readonly Finding[] {
  const { use, drawn, clearance } = query;
  // A disc of the clearance rolls along the drawn contour: inside a blank, outside a hole.
  const role = use === 'pierce' ? 'punch' : 'die';
  const places = unreachedPlaces([drawn], asCutRegion([drawn], role, clearance), role, clearance);
  return places
    .filter(({ shape }) => shape.kind === 'slot')
    .map(({ shape, depth, outline }) =>
      clearanceFinding(
        query,
        `A feature here is narrower than twice the clearance of ${sayLength(clearance)}: the ${memberOf(query)} loses ${sayLength(depth)} of it.`,
        { ...shape.at, reach: Math.max(extent(outline), 10 * clearance) },
      ),
    );
}

function lostContour(query: ClearanceQuery): Finding {
  const { designed, clearance, drawn } = query;
  const box = contourBox(drawn);
  return clearanceFinding(
    query,
    designed.length === 0
      ? `With ${sayLength(clearance)} per side nothing is left of the ${memberOf(query)}.`
      : `With ${sayLength(clearance)} per side the ${memberOf(query)} falls into ${designed.length} parts: a neck is narrower than twice the clearance.`,
    { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, reach: extent(drawn) / 2 },
  );
}

const memberOf = ({ use }: ClearanceQuery): string =>
  use === 'pierce' ? 'die' : use === 'mate' ? 'plug' : 'punch';

function clearanceFinding(
  { contourId, memberId, clearance }: ClearanceQuery,
  message: string,
  place: { x: number; y: number; reach: number },
): Finding {
  return findingOf({
    code: 'clearance-too-large',
    weight: 'stop',
    title: 'The clearance is larger than a feature',
    message,
    place,
    contourId,
    memberId,
    numbers: [{ label: 'clearance', value: clearance, kind: 'length' }],
    cures: [{ kind: 'other', say: 'Choose a smaller clearance, or leave this contour out.' }],
  });
}
