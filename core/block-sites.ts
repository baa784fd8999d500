import type { Drawing } from './drawing/drawing';
import type { Arrangement } from './die/tool';
import { circleOf } from './geometry/circle-of';
import type { Job } from './job';
import { memberId } from './member-id';
import { blanksOf, openingPart, type PlacedContour } from './placed-contours';
import type { MemberRole, PartName, PlateName } from './plan';
import { blockGroups, type GroupedBlocks, type PlacedMember } from './wire/block-groups';

/** The blocks of a job and where its members lie in them, from the drawing alone: no path is needed yet. */
export function blockSites(
  { contours, leftOut }: Drawing,
  placed: readonly PlacedContour[],
  setup: Job['setup'],
  lead: Job['lead'],
  heights: Readonly<Record<PartName, number>>,
  arrangement: Arrangement,
  plates: readonly PlateName[],
  isOneBlock: boolean,
): GroupedBlocks {
  const parents = new Map(contours.map(({ id, parentId }) => [id, parentId]));
  const stations = new Map(placed.map(({ contour, station }) => [contour.id, station]));
  const blanks = blanksOf(placed);
  const members: PlacedMember[] = [];
  const byId = new Map<string, PlacedMember>();
  for (const one of placed) {
    const { contour, id } = one.contour;
    // Where the holes are pierced in another station they lie beside the blank, not in it.
    const around = ancestors(id, parents).filter((other) => stations.get(other) === one.station);
    const parts = partsOfContour(one, plates, isOneBlock);
    for (const { part, role } of parts) {
      const own = openingPart(one, blanks, arrangement);
      const isInPunch = part === 'die' && own.part === 'punch';
      const member: PlacedMember = {
        memberId: memberId(one.use, id, part),
        role,
        part: isInPunch ? 'punch' : part,
        contour,
        contourId: id,
        around,
        within: isInPunch ? (byId.get(own.punchId ?? '') ?? null) : null,
        isApart: one.use === 'mate',
      };
      members.push(member);
      byId.set(member.memberId, member);
    }
  }
  const usedIds = new Set(placed.map(({ contour }) => contour.id));
  const unused = [...contours.filter(({ id }) => !usedIds.has(id)), ...leftOut];
  const drawnHoles = unused.flatMap(({ contour }) => circleOf(contour) ?? []);
  const wall = (part: PartName) => Math.max(setup.frame, plateWall * heights[part]);
  const margin = {
    die: wall('die'),
    punch: setup.frame + lead.length + lead.holeDiameter + pathRoom,
    stripper: wall('stripper'),
    retainer: wall('retainer'),
  };
  return blockGroups(members, setup, margin, drawnHoles);
}

const partsOfContour = (
  { use }: PlacedContour,
  plates: readonly PlateName[],
  isOneBlock: boolean,
): readonly { part: PartName; role: MemberRole }[] => [
  { part: 'die', role: 'die' },
  // Out of one block the punch comes with the die's cut.
  ...(isOneBlock && use !== 'mate' ? [] : [{ part: 'punch', role: 'punch' } as const]),
  // A plug needs no stripper.
  ...(use === 'mate' ? [] : plates.map((part) => ({ part, role: 'die' as const }))),
];

/** Steel between an opening and the edge of a plate, in its heights (common practice). */
const plateWall = 1.25;

/** The path runs a little outside the punch as drawn, mm. */
const pathRoom = 1;

/** Innermost first. */
function ancestors(id: string, parents: ReadonlyMap<string, string | null>): readonly string[] {
  const around: string[] = [];
  for (let at = parents.get(id) ?? null; at !== null; at = parents.get(at) ?? null) around.push(at);
  return around;
}
