import type { PairCorner } from '../die/corner-radii';
import type { PairContours } from '../die/pair-contours';
import type { Rounding } from '../die/corner-rounding';
import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { Point } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import type { MemberRole, Use } from '../plan';
import { sayAngle, sayLength } from '../say';
import * as portable from '../geometry/portable-math';

export interface CornerFindingQuery {
  readonly contourId: string;
  readonly use: Use;
  readonly memberIds: Readonly<Record<MemberRole, string>>;
  readonly corners: readonly PairCorner[];
  readonly refused: PairContours['refused'];
}

/** Radii that do not fit, and corners of the part that are not as the drawing has them. */
export function cornerFindings(query: CornerFindingQuery): readonly Finding[] {
  return [
    ...(['die', 'punch'] as const).flatMap((role) =>
      query.refused[role].map((rounding) => refusedRadius(query, role, rounding)),
    ),
    ...changedPart(query),
  ];
}

function refusedRadius(
  { contourId, memberIds, corners }: CornerFindingQuery,
  role: MemberRole,
  { place, radius: drawingRadius }: Rounding,
): Finding {
  const corner = corners.find((one) => one.place === place);
  const radius = drawingRadius + (corner?.shift[role] ?? 0);
  const tangent = radius / portable.tan(place.angle / 2);
  return findingOf({
    code: 'corner-radius',
    weight: 'decide',
    title: `No room for the radius at this corner of the ${role}`,
    message:
      `A radius of ${sayLength(radius)} takes ${sayLength(tangent)} of both edges at a corner of ${sayAngle(place.angle)}. ` +
      'An edge is shorter, or the corner beside it takes the room: this one stays as drawn.',
    place: { ...place.at, reach: 2 * tangent },
    contourId,
    memberId: memberIds[role],
    numbers: [
      { label: 'radius', value: radius, kind: 'length' },
      { label: 'length taken of each edge', value: tangent, kind: 'length' },
    ],
    cures: [
      {
        kind: 'corner',
        contourId,
        at: place.at,
        side: corner?.insideMember === role ? 'inside' : 'outside',
        rule: { rule: 'as drawn' },
        say: 'Leave this corner as drawn.',
      },
      { kind: 'other', say: 'Choose a smaller radius for it.' },
    ],
  });
}

/** The part takes its shape from the die opening where it is blanked, a hole its from the punch. */
function changedPart({
  contourId,
  use,
  memberIds,
  corners,
  refused,
}: CornerFindingQuery): readonly Finding[] {
  const role = use === 'pierce' ? 'punch' : 'die';
  const changed = corners
    .filter(
      ({ place, drawingRadius }) =>
        drawingRadius[role] > place.drawnRadius + tolerance.samePoint &&
        refused[role].every((rounding) => rounding.place !== place),
    )
    .map((corner) => ({ corner, departure: departureOf(corner, role) }))
    .sort((a, b) => b.departure - a.departure);
  const [worst] = changed;
  if (!worst) return [];
  const { place, drawingRadius } = worst.corner;
  const count = changed.length;
  return [
    findingOf({
      code: 'corner-changed',
      weight: 'decide',
      title: count === 1 ? 'A corner of the part is rounded' : `${count} corners of the part are rounded`,
      message:
        `The ${use === 'blank' ? 'part' : 'hole'} gets ${count === 1 ? 'it' : 'them'} from the ${role}. ` +
        `Here the radius is ${sayLength(drawingRadius[role])}, ${sayLength(worst.departure)} off the drawn corner: agree it with the customer.`,
      place: { ...place.at, reach: 4 * drawingRadius[role] },
      contourId,
      memberId: memberIds[role],
      numbers: [
        { label: 'corners', value: count, kind: 'count' },
        { label: 'radius', value: drawingRadius[role], kind: 'length' },
        { label: 'off the drawn corner', value: worst.departure, kind: 'length' },
      ],
      cures: [{ kind: 'other', say: 'Take the radius back where the customer needs the corner.' }],
    }),
  ];
}

/** How far a rounding takes a contour off its corner: along the bisector, radius · (1 / sin(angle / 2) − 1). */
const departureOf = ({ place, drawingRadius }: PairCorner, role: MemberRole): number =>
  (drawingRadius[role] - place.drawnRadius) * (1 / portable.sin(place.angle / 2) - 1);

export interface RolledQuery {
  readonly contourId: string;
  readonly memberId: string;
  readonly offset: number;
  /** Corners with a sharp path asked for, where the wire has to roll. */
  readonly rolled: readonly Point[];
}

/** The corners that the wire rolls round although the job asks for a sharp path. */
export function rolledCorners({ contourId, memberId, offset, rolled }: RolledQuery): readonly Finding[] {
  const [first] = rolled;
  if (!first) return [];
  return [
    findingOf({
      code: 'corner-path',
      weight: 'note',
      title: 'The wire rolls round a corner after all',
      message:
        `Past ${rolled.length === 1 ? 'this corner' : `${rolled.length} corners, this among them,`} a sharp path would come too near to ` +
        'another edge of the member. The member is the same either way.',
      place: { x: first.x, y: first.y, reach: 10 * offset },
      contourId,
      memberId,
      numbers: [{ label: 'corners', value: rolled.length, kind: 'count' }],
    }),
  ];
}
