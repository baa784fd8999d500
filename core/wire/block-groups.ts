import type { SetupSettings } from '../cut-settings';
import type { Box, Contour } from '../geometry/contour';
import { boxAround, contourBox } from '../geometry/contour-measures';
import type { Block, DrawnHole, MemberRole, PartName, Site } from '../plan';

/** A member before it is planned: where it lies, and within how many others. */
export interface PlacedMember {
  readonly memberId: string;
  readonly role: MemberRole;
  readonly part: PartName;
  /** The member in whose block it is cut: a piercing die in its blanking punch; null: by the rule for its part. */
  readonly within: PlacedMember | null;
  /** Cut from a block of its own whatever the rule. */
  readonly isApart: boolean;
  /** As drawn, counter-clockwise. */
  readonly contour: Contour;
  readonly contourId: string;
  /** The contours around it that are used too, innermost first. */
  readonly around: readonly string[];
}

/** A block before its order of work is known. */
export type BlockGroup = Omit<Block, 'order' | 'travel'>;

export interface GroupedBlocks {
  readonly groups: readonly BlockGroup[];
  /** By member id. */
  readonly sites: ReadonlyMap<string, Site>;
}

/**
 * Which members are cut from one block, how large each block is, and what each member has to keep clear of.
 *
 * Together: all dies whose openings lie beside one another share a block; an opening that lies inside another would be
 * cut out of its slug, so it goes into the next block. One block: inner ones too (a compound tool, whose outer slug is
 * kept). Apart: a block for each. `margin` is the steel around a member's contour, mm; the clamps' strips come to it.
 */
export function blockGroups(
  members: readonly PlacedMember[],
  setup: SetupSettings,
  margin: Readonly<Record<PartName, number>>,
  drawnHoles: readonly DrawnHole[],
): GroupedBlocks {
  const byBlock = new Map<string, PlacedMember[]>();
  for (const member of members) {
    const id = blockId(member, setup);
    const own = byBlock.get(id);
    if (own) own.push(member);
    else byBlock.set(id, [member]);
  }
  const groups = [...byBlock].map(([id, own]): BlockGroup => {
    const part = own[0]?.part ?? 'die';
    // A punch with openings in it is a body like any other.
    const role = own.some((member) => member.role === 'punch') ? 'punch' : 'die';
    const outline = setup.outlines[id] ?? outlineAround(own, margin[part], setup.clamps);
    const clamps = clampStrips(outline, setup.clamps);
    const ownSites = own.map((member): [string, Site] => {
      const others = own.filter((other) => isObstacle(member, other)).map(({ contour }) => contour);
      return [member.memberId, { block: outline, frame: setup.frame, clamps, others, drawnHoles }];
    });
    return {
      id,
      role,
      part,
      memberIds: own.map(({ memberId }) => memberId),
      outline,
      clamps,
      frame: setup.frame,
      sites: Object.fromEntries(ownSites),
    };
  });
  const sites = new Map(groups.flatMap((group) => Object.entries(group.sites)));
  return { groups, sites };
}

function blockId(member: PlacedMember, setup: SetupSettings): string {
  const { part, memberId, around, within, isApart } = member;
  if (within) return blockId(within, setup);
  const rule = part === 'die' ? setup.dies : part === 'punch' ? setup.punches : 'together';
  if (rule === 'apart' || isApart) return memberId;
  const level = rule === 'one block' ? 0 : around.length;
  return level === 0 ? part : `${part}-${level + 1}`;
}

/** Of dies only the openings inside one's own slug are in the way; of punches all the others. */
const isObstacle = (member: PlacedMember, other: PlacedMember): boolean =>
  other !== member && (member.role === 'punch' || other.around.includes(member.contourId));

/** Whole millimetres: nobody saws a block to less. */
function outlineAround(
  members: readonly PlacedMember[],
  margin: number,
  clamps: SetupSettings['clamps'],
): Box {
  const box = members.map(({ contour }) => contourBox(contour)).reduce(boxAround);
  return {
    minX: Math.floor(box.minX - margin - clamps.left),
    minY: Math.floor(box.minY - margin - clamps.bottom),
    maxX: Math.ceil(box.maxX + margin + clamps.right),
    maxY: Math.ceil(box.maxY + margin + clamps.top),
  };
}

function clampStrips(block: Box, { left, right, bottom, top }: SetupSettings['clamps']): readonly Box[] {
  const strips = [
    { width: left, box: { ...block, maxX: block.minX + left } },
    { width: right, box: { ...block, minX: block.maxX - right } },
    { width: bottom, box: { ...block, maxY: block.minY + bottom } },
    { width: top, box: { ...block, minY: block.maxY - top } },
  ];
  return strips.filter(({ width }) => width > 0).map(({ box }) => box);
}
