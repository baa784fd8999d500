import { boxAround, contourBox } from '../../core/geometry/contour-measures';
import type { Box } from '../../core/geometry/contour';
import type { Plan } from '../../core/plan';
import { membersOf } from '../../core/wire/members-of';

/** Everything a plan draws: the outline, start holes, wire paths and the exit face of a relief. */
export function planBox(plan: Plan): Box {
  let box = plan.drawing.box;
  for (const { cuts, relief } of membersOf(plan)) {
    for (const loop of relief?.planes.at(-1)?.wall ?? []) box = boxAround(box, contourBox(loop));
    for (const cut of cuts) {
      for (const pass of cut.passes) box = boxAround(box, contourBox(pass.loop));
      for (const start of cut.starts) {
        if (!start) continue;
        const { x, y, diameter } = start;
        const radius = diameter / 2;
        box = boxAround(box, { minX: x - radius, minY: y - radius, maxX: x + radius, maxY: y + radius });
      }
    }
  }
  return box;
}
