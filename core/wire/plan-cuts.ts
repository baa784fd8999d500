import { noChoice, type CutChoice } from '../cut-settings';
import type { Contour, Region, Vertex } from '../geometry/contour';
import { contourArea, reversedContour } from '../geometry/contour-measures';
import { nearestLoop } from '../geometry/nearest-loop';
import { prepareRegion } from '../geometry/offset-region';
import { windingNumber } from '../geometry/winding';
import type { Cut, MemberRole, Site } from '../plan';
import { pathLoops } from './as-cut';
import { buildCut, type PassLoops } from './build-cut';
import { compensationRoom } from './compensation-room';
import type { CutLayout } from './cut-layout';
import type { CutWishes } from './cut-wishes';
import { rollingPath, type SharpPath } from './corner-extension';
import { orderOfWork } from './order-of-work';
import type { PassOffset } from './pass-offsets';
import { placeCut } from './place-cut';
import { toldContours } from './told-contours';

/** What the checks need to know of a cut besides its paths. */
export interface PlannedCut {
  readonly cut: Cut;
  readonly layout: CutLayout;
  readonly choice: CutChoice;
  /** Earlier passes that do not reach through this loop in one piece: their offset does not fit a neck. */
  readonly brokenPasses: readonly number[];
}

/** What a person chose for the cuts, by cut id. */
export type CutChoices = Readonly<Record<string, CutChoice>>;

/**
 * The cuts of one member: one for every loop of the finishing pass, with the loops of the earlier passes that belong
 * to it. Loops come largest first. No loop at all means that the wire does not go in.
 */
export function planCuts(
  memberId: string,
  designed: Region,
  role: MemberRole,
  offsets: readonly PassOffset[],
  wishes: CutWishes,
  site: Site,
  choices: CutChoices,
  sharp: SharpPath = rollingPath,
): readonly PlannedCut[] {
  const room = compensationRoom(wishes.lastDecimal);
  const prepared = prepareRegion(designed, Math.max(...offsets.map(({ offset }) => offset)) + room);
  const loopsOf = offsets.map(({ offset }) => pathLoops(prepared, role, offset, sharp));
  const contoursOf = offsets.map(({ offset }) => toldContours(prepared, role, offset, wishes.lastDecimal));
  const finals = [...(loopsOf[loopsOf.length - 1] ?? [])].sort(
    (a, b) => Math.abs(contourArea(b)) - Math.abs(contourArea(a)),
  );
  return finals.map((final, index) => {
    const waste = role === 'die' || contourArea(final) < 0 ? 'inside' : 'outside';
    const brokenPasses: number[] = [];
    const passes: PassLoops[] = [];
    offsets.forEach(({ pass, offset, feed }, k) => {
      const own = k === offsets.length - 1 ? [final] : belongingTo(final, waste, loopsOf[k] ?? []);
      const [loop] = own;
      if (own.length !== 1) brokenPasses.push(pass);
      if (!loop) return;
      const contour = nearestLoop(contoursOf[k] ?? [], loop);
      passes.push({
        pass,
        offset,
        feed,
        loop: travelled(loop, wishes.direction),
        contour: contour && travelled(contour, wishes.direction),
      });
    });
    const id = `${memberId}-${index + 1}`;
    const choice = choices[id] ?? noChoice;
    // What is cut round about is the piece that is wanted.
    const slug = waste === 'outside' ? 'kept' : (choice.slug ?? wishes.slug);
    const rough = passes[0] as PassLoops;
    const layout = placeCut(rough.loop, waste, wishes, site, choice, rough.offset);
    const order = orderOfWork({
      tabs: layout.tabs.length,
      passes: passes.length,
      slug,
      sequence: wishes.sequence,
    });
    return { cut: buildCut({ id, waste, slug }, passes, layout, order), layout, choice, brokenPasses };
  });
}

/** The loops of another pass on the same side: inside the final loop, or the one around it. Largest first. */
function belongingTo(final: Contour, waste: 'inside' | 'outside', loops: Region): readonly Contour[] {
  const sameTurn = loops.filter((loop) => contourArea(loop) > 0 === contourArea(final) > 0);
  const own = sameTurn.filter((loop) => {
    const [outer, inner] = waste === 'inside' ? [final, loop] : [loop, final];
    const { x, y } = inner[0] as Vertex;
    return windingNumber(outer, x, y) !== 0;
  });
  return own.sort((a, b) => Math.abs(contourArea(b)) - Math.abs(contourArea(a)));
}

function travelled(loop: Contour, direction: CutWishes['direction']): Contour {
  return contourArea(loop) > 0 === (direction === 'counter-clockwise') ? loop : reversedContour(loop);
}
