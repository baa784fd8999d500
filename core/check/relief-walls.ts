import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import { combineRegions } from '../geometry/combine-regions';
import { boxAround, contourBox } from '../geometry/contour-measures';
import type { Box, Point, Region } from '../geometry/contour';
import { leastDistance } from '../geometry/least-distance';
import { indexOf } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import type { Block, Member } from '../plan';
import { sayLength } from '../say';

/** Openings of one block whose reliefs meet below the cutting edge: the wall between them does not reach the exit face. */
export function reliefWalls(blocks: readonly Block[], members: readonly Member[]): readonly Finding[] {
  const exits = members.flatMap((member): readonly Exit[] => {
    const wall = member.relief?.planes.at(-1)?.wall ?? [];
    return wall.length === 0 ? [] : [{ member, wall, box: wall.map(contourBox).reduce(boxAround) }];
  });
  return blocks.flatMap(({ memberIds }) => {
    const own = exits.filter(({ member }) => memberIds.includes(member.id));
    return own.flatMap((a, i) => own.slice(i + 1).flatMap((b) => meeting(a, b)));
  });
}

interface Exit {
  readonly member: Member;
  readonly wall: Region;
  readonly box: Box;
}

function meeting(a: Exit, b: Exit): readonly Finding[] {
  if (a.box.maxX < b.box.minX || b.box.maxX < a.box.minX) return [];
  if (a.box.maxY < b.box.minY || b.box.maxY < a.box.minY) return [];
  const at = placeOfMeeting(a.wall, b.wall);
  if (!at) return [];
  const across = a.member.relief?.planes.at(-1)?.depth ?? 0;
  return [
    findingOf({
      code: 'relief-place',
      weight: 'stop',
      title: 'Two reliefs meet',
      message: `The reliefs of ${a.member.id} and ${b.member.id} break into each other before the exit face, ${sayLength(across)} below the cutting edge.`,
      place: { ...at, reach: 3 },
      memberId: a.member.id,
      contourId: a.member.contourId,
      cures: [
        {
          kind: 'other',
          say: 'Choose a smaller angle or a higher land, or cut the two in dies of their own.',
        },
      ],
    }),
  ];
}

/** The middle of what two openings have in common, or where they touch; null where there is a wall between them. */
function placeOfMeeting(a: Region, b: Region): Point | null {
  const [common] = combineRegions(a, b, 'intersection');
  if (common) {
    const { minX, minY, maxX, maxY } = contourBox(common);
    return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  }
  const { distance, at } = leastDistance(tableOfRegion(a), indexOf(tableOfRegion(b)));
  return distance <= tolerance.sameBoundary ? at : null;
}
