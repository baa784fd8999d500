import type { Drawing } from './drawing/drawing';
import { circleOf } from './geometry/circle-of';
import type { Job } from './job';
import { memberId } from './member-id';
import type { UsedContour } from './used-contours';
import { blockGroups, type GroupedBlocks, type PlacedMember } from './wire/block-groups';

/** The blocks of a job and where its members lie in them, from the drawing alone: no path is needed yet. */
export function blockSites(
  { contours, leftOut }: Drawing,
  used: readonly UsedContour[],
  setup: Job['setup'],
  lead: Job['lead'],
  dieHeight: number,
): GroupedBlocks {
  const usedIds = new Set(used.map(({ contour }) => contour.id));
  const parents = new Map(contours.map(({ id, parentId }) => [id, parentId]));
  const members = used.flatMap((one): readonly PlacedMember[] => {
    const around = ancestors(one.contour.id, parents).filter((id) => usedIds.has(id));
    const { contour, id } = one.contour;
    return (['die', 'punch'] as const).map((role) => ({
      memberId: memberId(one.use, id, role),
      role,
      contour,
      contourId: id,
      around,
    }));
  });
  const unused = [...contours.filter(({ id }) => !usedIds.has(id)), ...leftOut];
  const drawnHoles = unused.flatMap(({ contour }) => circleOf(contour) ?? []);
  const margin = {
    die: Math.max(setup.frame, dieWall * dieHeight),
    punch: setup.frame + lead.length + lead.holeDiameter + pathRoom,
  };
  return blockGroups(members, setup, margin, drawnHoles);
}

/** Steel between an opening and the edge of the die block, in block heights (common practice). */
const dieWall = 1.25;

/** The path runs a little outside the punch as drawn, mm. */
const pathRoom = 1;

/** Innermost first. */
function ancestors(id: string, parents: ReadonlyMap<string, string | null>): readonly string[] {
  const around: string[] = [];
  for (let at = parents.get(id) ?? null; at !== null; at = parents.get(at) ?? null) around.push(at);
  return around;
}
