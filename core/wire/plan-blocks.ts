import type { SetupSettings } from '../cut-settings';
import type { Box } from '../geometry/contour';
import { boxAround, contourBox } from '../geometry/contour-measures';
import type { Block, Member } from '../plan';

/** The block of each member, with room for its start holes and its frame. */
export function planBlocks(members: readonly Member[], setup: SetupSettings): readonly Block[] {
  return members.map((member) => ({
    id: member.id,
    role: member.role,
    memberIds: [member.id],
    outline: grown(boxOf(member), setup.frame),
    clamps: [],
    frame: setup.frame,
    order: member.cuts.flatMap((cut, index) =>
      cut.threadings.map((_, threading) => ({ memberId: member.id, cut: index, threading })),
    ),
    travel: 0,
  }));
}

function boxOf({ designed, cuts }: Member): Box {
  const starts = cuts.flatMap((cut) => cut.starts).flatMap((start) => start ?? []);
  const boxes = [
    ...designed.map(contourBox),
    ...starts.map(({ x, y, diameter }) => grown({ minX: x, minY: y, maxX: x, maxY: y }, diameter / 2)),
  ];
  return boxes.length > 0 ? boxes.reduce(boxAround) : { minX: 0, minY: 0, maxX: 0, maxY: 0 };
}

const grown = ({ minX, minY, maxX, maxY }: Box, by: number): Box => ({
  minX: minX - by,
  minY: minY - by,
  maxX: maxX + by,
  maxY: maxY + by,
});
