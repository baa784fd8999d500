import { boxAround, contourBox } from '../../core/geometry/contour-measures';
import type { Box } from '../../core/geometry/contour';
import type { Plan } from '../../core/plan';

/** Everything a plan draws: the outline, start holes, wire paths and the exit face of a relief. */
export function planBox(plan: Plan): Box {
  let box = plan.drawing.box;
  for (const pair of plan.pairs) {
    for (const loop of pair.die.relief?.planes.at(-1)?.wall ?? []) box = boxAround(box, contourBox(loop));
    for (const cut of [...pair.die.cuts, ...pair.punch.cuts]) {
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
