import { exitEnlargement, growthPerGrind, regrindsLeft } from '../die/regrinds';
import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { Point } from '../geometry/contour';
import { closeRegion } from '../geometry/open-region';
import { tolerance } from '../geometry/tolerance';
import type { Relief, SurfaceDeviation } from '../plan';
import { sayAngle, sayLength } from '../say';
import { extent, unreachedPlaces } from './unreached-places';

export interface ReliefOwner {
  readonly memberId: string;
  readonly contourId: string;
}

export interface ReliefFindingQuery extends ReliefOwner {
  readonly relief: Relief;
  /** Greatest angle of the machine's wire to the vertical, radians. */
  readonly largestLean: number;
}

/** What a relief leaves of the die, what it asks of the machine, and how true its surface is. */
export function reliefFindings(query: ReliefFindingQuery): readonly Finding[] {
  return [...split(query), ...thinSteel(query), ...leanFinding(query), ...surfaceFinding(query)];
}

/** A land that leaves no height for a relief. */
export function landTooHigh(owner: ReliefOwner, land: number, height: number): Finding {
  return findingOf({
    ...owner,
    code: 'relief-land',
    weight: 'stop',
    title: 'The land is as high as the die',
    message: `A land of ${sayLength(land)} leaves nothing of a die of ${sayLength(height)} to be relieved.`,
    numbers: [
      { label: 'land', value: land, kind: 'length' },
      { label: 'height of the die', value: height, kind: 'length' },
    ],
    cures: [{ kind: 'other', say: 'Lower the land, or leave the relief out.' }],
  });
}

/** A place of the contour where the leaning wire has no way. */
export function noTaper(owner: ReliefOwner, at: Point, angle: number): Finding {
  return findingOf({
    ...owner,
    code: 'relief-place',
    weight: 'stop',
    title: 'The relief does not get round here',
    message:
      `At ${sayAngle(angle)} per side an edge or radius here is used up before the exit face: ` +
      'the upper end of the wire has no way that belongs to the contour.',
    place: { ...at, reach: 2 },
    numbers: [{ label: 'angle', value: angle, kind: 'angle' }],
    cures: [{ kind: 'other', say: 'Choose a smaller angle, a higher land or conical corners.' }],
  });
}

function split({ relief: { planes }, memberId, contourId }: ReliefFindingQuery): readonly Finding[] {
  const [land, exit] = [planes[0], planes.at(-1)];
  if (!land || !exit || exit.wall.length === land.wall.length) return [];
  return [
    findingOf({
      memberId,
      contourId,
      code: 'relief-place',
      weight: 'stop',
      title: 'The relief breaks through the die',
      message: `At the exit face the opening has ${exit.wall.length} outlines where the cutting edge has ${land.wall.length}: a wall of the die is thinner than the relief on both its sides.`,
      cures: [{ kind: 'other', say: 'Choose a smaller angle or a higher land.' }],
    }),
  ];
}

/** Steel of the die between two sides of the opening that the relief takes from both: it ends above the exit face. */
function thinSteel({ relief, memberId, contourId }: ReliefFindingQuery): readonly Finding[] {
  const wall = relief.planes[0]?.wall ?? [];
  const growth = exitEnlargement(relief.height, { land: relief.land, relief: relief.angle });
  return unreachedPlaces(wall, closeRegion(wall, growth), 'punch', growth)
    .filter(({ shape }) => shape.kind === 'slot')
    .map(({ shape, outline }) =>
      findingOf({
        memberId,
        contourId,
        code: 'relief-place',
        weight: 'decide',
        title: 'The relief undercuts a thin part of the die',
        message: `The die is thinner here than twice the ${sayLength(growth)} that the relief takes off each side: this part of it does not reach down to the exit face.`,
        place: { ...shape.at, reach: Math.max(extent(outline), 4 * growth) },
        numbers: [{ label: 'relief at the exit face', value: growth, kind: 'length' }],
        cures: [{ kind: 'other', say: 'Choose a smaller angle, a higher land or a lower die.' }],
      }),
    );
}

function leanFinding(query: ReliefFindingQuery): readonly Finding[] {
  const { relief, largestLean, memberId, contourId } = query;
  const { greatestLean, greatestLeanAt, angle } = relief;
  if (greatestLean <= largestLean * hardlyMore) return [];
  const atCorner = greatestLean > angle * hardlyMore;
  return [
    findingOf({
      memberId,
      contourId,
      code: 'relief-lean',
      weight: 'stop',
      title: 'The wire would lean more than the machine can',
      message:
        `Here it leans ${sayAngle(greatestLean)}${atCorner ? `, more than the ${sayAngle(angle)} of the edges since it follows two of them` : ''}; ` +
        `the machine of the technology table goes to ${sayAngle(largestLean)}.`,
      place: { ...greatestLeanAt, reach: 2 },
      numbers: [
        { label: 'angle of the wire', value: greatestLean, kind: 'angle' },
        { label: 'largest angle', value: largestLean, kind: 'angle' },
      ],
      cures: [
        {
          kind: 'other',
          say: atCorner
            ? 'Choose conical corners, fillet this corner, or choose a smaller angle.'
            : 'Choose a smaller angle.',
        },
      ],
    }),
  ];
}

/** Chords about an outside corner lean the wire by so much more than the corner does, and no angle is set as exactly. */
const hardlyMore = 1 + 1 / 1000;

/** The worst of the planes; the end of the land counts most, since the part is cut there. */
function surfaceFinding({ relief, memberId, contourId }: ReliefFindingQuery): readonly Finding[] {
  const off = ({ gouge, remainder }: SurfaceDeviation): number => Math.max(gouge, remainder);
  const [worst] = [...relief.planes].sort((a, b) => off(b) - off(a));
  if (!worst || off(worst) <= tolerance.ruledSurface) return [];
  const isGouge = worst.gouge >= worst.remainder;
  const at = isGouge ? worst.gougeAt : worst.remainderAt;
  const plane =
    worst.depth <= relief.land
      ? 'at the end of the land'
      : `${sayLength(worst.depth)} below the cutting edge`;
  return [
    findingOf({
      memberId,
      contourId,
      code: 'relief-surface',
      weight: 'decide',
      title: isGouge
        ? 'The leaning wire cuts beyond the wanted wall'
        : 'The leaning wire leaves stock on the wall',
      message:
        `It is off by ${sayLength(off(worst))} ${plane}. ` +
        'Corners of constant radius lean the wire more than the wall, and bend beside arcs that turn with them.',
      ...(at ? { place: { ...at, reach: 1 } } : {}),
      numbers: [
        { label: 'beside the wanted wall', value: off(worst), kind: 'length' },
        { label: 'allowed', value: tolerance.ruledSurface, kind: 'length' },
        { label: 'below the cutting edge', value: worst.depth, kind: 'length' },
      ],
      cures: [{ kind: 'other', say: 'Choose conical corners or a smaller angle.' }],
    }),
  ];
}

/** What regrinding makes of the openings: once for the job, since all its dies have the same relief. */
export function reliefGrowth(
  { land, height, angle }: Pick<Relief, 'land' | 'height' | 'angle'>,
  perGrind: number,
): Finding {
  const growth = growthPerGrind(perGrind, angle);
  const lasts = regrindsLeft({ land, relief: angle }, perGrind, height, 0);
  const larger = `the opening ${sayLength(growth)} larger on each side`;
  return findingOf({
    code: 'relief-growth',
    weight: 'note',
    title: land > 0 ? `The land lasts for ${lasts} regrinds` : 'Every regrind opens the die',
    message:
      land > 0
        ? `At ${sayLength(perGrind)} a time the land of ${sayLength(land)} is used up after ${lasts}; each regrind then makes ${larger}.`
        : `The relief begins at the cutting edge: each regrind of ${sayLength(perGrind)} makes ${larger}.`,
    numbers: [
      { label: 'growth per regrind and side', value: growth, kind: 'length' },
      { label: 'regrinds', value: lasts, kind: 'count' },
    ],
  });
}

/** Offsets are asked for, which the programs of relieved dies do without. */
export const reliefWithoutOffsets = (): Finding =>
  findingOf({
    code: 'relief-program',
    weight: 'note',
    title: 'Dies with a relief have no offsets in their program',
    message:
      "Controls differ in how they offset a leaning wire: these programs give the path of the wire's centre, at both its ends. The control's offset table makes these dies no wider or narrower.",
    cures: [{ kind: 'other', say: 'Change spark gap or stock left here, and write the program again.' }],
  });
