import type { SetupSettings } from '../cut-settings';
import type { Box, Point, Vertex } from '../geometry/contour';
import { contourBox } from '../geometry/contour-measures';
import { windingNumber } from '../geometry/winding';
import type { Block, BlockThreading, Cut, Member } from '../plan';
import type { BlockGroup } from './block-groups';
import { shortestTour, tourLength, type TourStop } from './shortest-tour';

/**
 * The blocks with their order of work: what lies inside something else comes before it (once the outer piece is loose,
 * nothing can be cut in it), and the way between start holes is short. Part by part: each cut is finished before the
 * next. Roughing first: of all cuts what runs unattended, then what someone has to stand by for, then the skims that
 * had to wait for that.
 */
export function planBlocks(
  groups: readonly BlockGroup[],
  members: readonly Member[],
  sequence: SetupSettings['sequence'],
): readonly Block[] {
  const byId = new Map(members.map((member) => [member.id, member]));
  return groups.map((group) => {
    const cuts = group.memberIds.flatMap((memberId) =>
      (byId.get(memberId)?.cuts ?? []).map((cut, index) => ({ memberId, index, cut })),
    );
    const order = sequence === 'part by part' ? partByPart(cuts) : roughingFirst(cuts);
    return {
      ...group,
      order: order.map(({ threading }) => threading),
      travel: tourLength(order, [...order.keys()]),
    };
  });
}

interface OwnCut {
  readonly memberId: string;
  readonly index: number;
  readonly cut: Cut;
}

/** A threading at its place. */
interface PlacedThreading extends Point {
  readonly threading: BlockThreading;
}

function partByPart(cuts: readonly OwnCut[]): readonly PlacedThreading[] {
  const inside = cutsInside(cuts);
  const stops = cuts.map(({ cut }, i): TourStop => ({ ...startOf(cut, 0), after: inside[i] ?? [] }));
  return shortestTour(stops).flatMap((i) => {
    const own = cuts[i] as OwnCut;
    return own.cut.threadings.map((_, threading) => placed(own, threading));
  });
}

function roughingFirst(cuts: readonly OwnCut[]): readonly PlacedThreading[] {
  const inside = cutsInside(cuts);
  return [0, 1, 2].flatMap((phase) => {
    const own = cuts.flatMap((cut, i) =>
      phasesOf(cut.cut).flatMap((of, threading) => (of === phase ? [{ i, ...placed(cut, threading) }] : [])),
    );
    const stops = own.map(({ x, y, i }, k): TourStop => {
      // A cut's own threadings keep their order; of other cuts, those inside come first.
      const after = own.flatMap((other, l) =>
        (other.i === i && l < k) || (other.i !== i && (inside[i] ?? []).includes(other.i)) ? [l] : [],
      );
      return { x, y, after };
    });
    return shortestTour(stops).map((k) => own[k] as (typeof own)[number]);
  });
}

/** 0 before anyone has to stand by, 1 while someone has to, 2 afterwards. */
function phasesOf({ threadings }: Cut): readonly (0 | 1 | 2)[] {
  const first = threadings.findIndex(({ attended }) => attended);
  return threadings.map(({ attended }, k) => (attended ? 1 : first >= 0 && k > first ? 2 : 0));
}

function placed({ memberId, index, cut }: OwnCut, threading: number): PlacedThreading {
  return { ...startOf(cut, threading), threading: { memberId, cut: index, threading } };
}

/** Where a threading begins; on the loop where no hole fits. */
function startOf(cut: Cut, threading: number): Point {
  const hole = cut.starts[cut.threadings[threading]?.start ?? 0];
  const { x, y } = hole ?? (cut.passes[0]?.loop[0] as Vertex);
  return { x, y };
}

/** For each cut the ones that lie inside its loop. */
function cutsInside(cuts: readonly OwnCut[]): readonly (readonly number[])[] {
  const loops = cuts.map(({ cut }) => cut.passes[0]?.loop ?? []);
  const boxes = loops.map(contourBox);
  return loops.map((outer, i) =>
    loops.flatMap((inner, j) => {
      const [first] = inner;
      // Boxes first: nearly all cuts lie beside one another.
      if (i === j || !first || !isBoxInside(boxes[j] as Box, boxes[i] as Box)) return [];
      return windingNumber(outer, first.x, first.y) !== 0 ? [j] : [];
    }),
  );
}

const isBoxInside = (inner: Box, outer: Box): boolean =>
  inner.minX > outer.minX && inner.minY > outer.minY && inner.maxX < outer.maxX && inner.maxY < outer.maxY;
