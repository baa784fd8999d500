import type { Box } from '../../core/geometry/contour';
import { boxAround } from '../../core/geometry/contour-measures';
import type { Plan } from '../../core/plan';
import { planBox } from './plan-box';

/** Around the paths and the die blocks; the strip goes on to both sides anyway. */
export const dieSetBox = (plan: Plan): Box =>
  plan.dieSet.tools.flatMap(({ block }) => block.outline ?? []).reduce(boxAround, planBox(plan));
