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

/**
 * Openings of one block whose reliefs meet below the cutting edge, so that the wall between them does not reach the exit
 * face, and reliefs that leave less steel at the block's edge than the cutting edge does and is wanted.
 */
export function reliefWalls(blocks: readonly Block[], members: readonly Member[]): readonly Finding[] {
  const exits = members.flatMap((member): readonly Exit[] => {
    const wall = member.relief?.planes.at(-1)?.wall ?? [];
    return wall.length === 0 ? [] : [{ member, wall, box: wall.map(contourBox).reduce(boxAround) }];
  });
  return blocks.flatMap((block) => {
    const own = exits.filter(({ member }) => block.memberIds.includes(member.id));
    return own.flatMap((a, i) => [...atEdge(a, block), ...own.slice(i + 1).flatMap((b) => meeting(a, b))]);
  });
}

interface Exit {
  readonly member: Member;
  readonly wall: Region;
  readonly box: Box;
}

function atEdge({ member, wall, box }: Exit, { outline, frame }: Block): readonly Finding[] {
  const room = roomIn(box, outline);
  const above = member.designed.map(contourBox).reduce(boxAround);
  if (room > 0 && (room >= frame || roomIn(above, outline) < frame)) return [];
  const at = wall.flat().find(({ x, y }) => roomIn({ minX: x, maxX: x, minY: y, maxY: y }, outline) <= room);
  return [
    findingOf({
      code: 'relief-place',
      weight: room > 0 ? 'decide' : 'stop',
      title: room > 0 ? 'The relief leaves little steel at the edge' : 'The relief breaks out of the block',
      message: `At the exit face ${sayLength(Math.max(0, room))} of steel stay between the opening and the edge of the block, ${sayLength(frame)} are wanted.`,
      ...(at ? { place: { x: at.x, y: at.y, reach: 3 } } : {}),
      memberId: member.id,
      contourId: member.contourId,
      numbers: [{ label: 'steel at the exit face', value: room, kind: 'length' }],
      cures: [{ kind: 'other', say: 'Take a larger block, a smaller angle or a higher land.' }],
    }),
  ];
}

const roomIn = (inner: Box, outer: Box): number =>
  Math.min(
    inner.minX - outer.minX,
    inner.minY - outer.minY,
    outer.maxX - inner.maxX,
    outer.maxY - inner.maxY,
  );

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
