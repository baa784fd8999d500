import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { Box, Contour, Point, Vertex } from '../geometry/contour';
import { contourBox } from '../geometry/contour-measures';
import { leastDistance } from '../geometry/least-distance';
import { indexOf } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import { tablesCross } from '../geometry/tables-cross';
import { windingNumber } from '../geometry/winding';
import type { Block, Cut, Member } from '../plan';
import { sayLength } from '../say';

/** What is wrong with the way members lie in their blocks: beyond the edge, in the frame or a clamp zone, in one another. */
export function blockFindings(blocks: readonly Block[], members: readonly Member[]): readonly Finding[] {
  const byId = new Map(members.map((member) => [member.id, member]));
  return blocks.flatMap((block) => {
    const own = block.memberIds.flatMap((id) => byId.get(id) ?? []);
    return [
      ...own.flatMap((member) =>
        member.cuts.flatMap((cut) => [
          ...edgeFinding(block, member, cut),
          ...clampFinding(block, member, cut),
        ]),
      ),
      ...(block.role === 'punch' ? crowdedFindings(own) : slugFindings(own)),
    ];
  });
}

function edgeFinding({ outline, frame }: Block, member: Member, { passes, waste }: Cut): readonly Finding[] {
  const rough = passes[0];
  // A pocket lies within its punch, whose own path says what there is to say.
  if (!rough || (member.role === 'punch' && waste === 'inside')) return [];
  const { place, room } = leastRoom(contourBox(rough.loop), outline);
  const left = room - rough.offset;
  if (left >= frame - hair) return [];
  const isOutside = left < 0;
  return [
    finding(member, place, {
      weight: isOutside ? 'stop' : 'decide',
      title: isOutside ? 'Cut beyond the edge of the block' : 'Little steel left at the edge of the block',
      message: isOutside
        ? `The wire runs ${sayLength(-left)} out of the block here.`
        : `${sayLength(left)} of steel stay between the cut and the edge of the block, ${sayLength(frame)} are wanted: a thin frame springs open.`,
      label: 'frame',
      value: Math.max(0, left),
      cure: 'Take a larger block, or ask for a narrower frame.',
    }),
  ];
}

function clampFinding({ clamps }: Block, member: Member, { passes }: Cut): readonly Finding[] {
  const rough = passes[0];
  if (!rough) return [];
  const loop = tableOfRegion([rough.loop]);
  return clamps.flatMap((clamp) => {
    const rectangle = rectangleOf(clamp);
    const index = indexOf(tableOfRegion([rectangle]));
    const { distance, at } = leastDistance(loop, index);
    const [first] = rough.loop;
    const isIn =
      tablesCross(loop, index) || (first !== undefined && windingNumber(rectangle, first.x, first.y) !== 0);
    if (!isIn && distance >= rough.offset) return [];
    return [
      finding(member, at, {
        weight: 'stop',
        title: 'The wire runs into a clamp zone',
        message: `The cut comes within ${sayLength(isIn ? 0 : distance)} of a strip that the clamps take.`,
        label: 'distance',
        value: isIn ? 0 : distance,
        cure: 'Clamp the block elsewhere, or take a larger one.',
      }),
    ];
  });
}

/** Punches of one block: what is cut round the one must not reach the other. */
function crowdedFindings(members: readonly Member[]): readonly Finding[] {
  const boxes = members.map(({ designed }) => designed.map(contourBox));
  return members.flatMap((member, i) => {
    const kerf = 2 * (member.cuts[0]?.passes[0]?.offset ?? 0);
    const index = indexOf(tableOfRegion(member.designed));
    return members.slice(i + 1).flatMap((other, k) => {
      const isFar = (boxes[i] ?? []).every((a) =>
        (boxes[i + 1 + k] ?? []).every((b) => boxesApart(a, b) > kerf),
      );
      if (isFar) return [];
      const table = tableOfRegion(other.designed);
      const { distance: apart, at } = leastDistance(table, index);
      const distance = tablesCross(table, index) ? 0 : apart;
      if (distance >= kerf) return [];
      return [
        finding(other, at, {
          weight: 'stop',
          title: 'Two punches too close for one block',
          message: `${member.id} and ${other.id} lie ${sayLength(distance)} apart as drawn, the wire needs ${sayLength(kerf)} between them.`,
          label: 'distance',
          value: distance,
          cure: 'Cut each punch from a block of its own.',
        }),
      ];
    });
  });
}

/** Dies of one block: an opening inside another one's slug goes with the slug, unless that is kept. */
function slugFindings(members: readonly Member[]): readonly Finding[] {
  return members.flatMap((inner) =>
    members.flatMap((outer) => {
      const [at] = inner.designed[0] ?? [];
      const around = outer.cuts.find(
        ({ slug, passes }) =>
          slug === 'dropped' && at && windingNumber(passes[0]?.loop ?? [], at.x, at.y) !== 0,
      );
      if (inner === outer || !at || !around) return [];
      return [
        finding(inner, at, {
          weight: 'decide',
          title: 'An opening in the slug of another one',
          message: `${inner.id} is cut into the slug of ${outer.id}, which is dropped.`,
          cure: `Keep the slug of ${outer.id} (a compound tool), or give inner openings a block of their own.`,
        }),
      ];
    }),
  );
}

interface Words {
  readonly weight: 'stop' | 'decide';
  readonly title: string;
  readonly message: string;
  readonly label?: string;
  readonly value?: number;
  readonly cure: string;
}

function finding({ id, contourId }: Member, at: Point, words: Words): Finding {
  const { weight, title, message, label, value, cure } = words;
  return findingOf({
    code: 'block',
    weight,
    title,
    message,
    place: { x: at.x, y: at.y, reach: 5 },
    memberId: id,
    contourId,
    ...(label !== undefined && value !== undefined ? { numbers: [{ label, value, kind: 'length' }] } : {}),
    cures: [{ kind: 'other', say: cure }],
  });
}

/** The least distance of a box from the edges of the one around it, and the place; negative where it sticks out. */
function leastRoom(inner: Box, outer: Box): { room: number; place: Point } {
  const middle = { x: (inner.minX + inner.maxX) / 2, y: (inner.minY + inner.maxY) / 2 };
  return [
    { room: inner.minX - outer.minX, place: { ...middle, x: inner.minX } },
    { room: outer.maxX - inner.maxX, place: { ...middle, x: inner.maxX } },
    { room: inner.minY - outer.minY, place: { ...middle, y: inner.minY } },
    { room: outer.maxY - inner.maxY, place: { ...middle, y: inner.maxY } },
  ].reduce((least, side) => (side.room < least.room ? side : least));
}

const boxesApart = (a: Box, b: Box): number =>
  Math.hypot(Math.max(a.minX - b.maxX, b.minX - a.maxX, 0), Math.max(a.minY - b.maxY, b.minY - a.maxY, 0));

function rectangleOf({ minX, minY, maxX, maxY }: Box): Contour {
  const at = (x: number, y: number): Vertex => ({ x, y, bulge: 0 });
  return [at(minX, minY), at(maxX, minY), at(maxX, maxY), at(minX, maxY)];
}

const hair = 1 / 1_000_000;
