import type { Place } from '../../finding';
import type { Box } from '../../geometry/contour';
import { boxAround, contourBox } from '../../geometry/contour-measures';
import type { Plan } from '../../plan';
import { membersOf } from '../../wire/members-of';
import { colours, memberStroke } from './member-drawing';
import { fillRegion, strokeRegion, type PaperView } from './paper-view';

/** What lies about a place: both members as designed and as cut, and the stock that one finding says is left. */
export function placeDrawing(view: PaperView, plan: Plan, findingKey: string): void {
  const members = membersOf(plan);
  for (const { remainders } of members) {
    for (const { findingKey: key, outline } of remainders) {
      if (key === findingKey) fillRegion(view, [outline], colours.remainder);
    }
  }
  for (const { role, designed, asCut } of members) {
    strokeRegion(view, designed, memberStroke(role));
    strokeRegion(view, asCut, { ...memberStroke(role, 0.15) });
  }
}

/** As close as a place is worth looking at: around the stock that is left there, where there is any. */
export function placeBox(plan: Plan, findingKey: string, { x, y, reach }: Place): Box {
  const left = membersOf(plan)
    .flatMap(({ remainders }) => remainders)
    .filter((remainder) => remainder.findingKey === findingKey)
    .map(({ outline }) => contourBox(outline));
  const [first, ...others] = left;
  const around = first ? others.reduce(boxAround, first) : null;
  const half = around
    ? Math.min(reach, 1.5 * Math.max(around.maxX - around.minX, around.maxY - around.minY))
    : reach;
  return { minX: x - half, minY: y - half, maxX: x + half, maxY: y + half };
}
