import { reliefGrowth, reliefWithoutOffsets } from './check/relief-findings';
import type { Finding } from './finding';
import type { Job } from './job';
import type { DieRelief } from './plan-member';
import { radians } from './units';
import { reliefPlan } from './wire/plan-relief';

/** What the job says about the relief of a die in a block of a height; null where it has none. */
export function dieRelief({ relief, technology }: Job, height: number): DieRelief | null {
  const plan = reliefPlan(relief, height);
  return plan && { plan, largestLean: radians(technology.machine.largestTaperDeg) };
}

/** What is worth knowing of the relief whatever the contours. */
export function reliefNotes({ relief, blocks, output }: Job): readonly Finding[] {
  const plan = reliefPlan(relief, blocks.die);
  if (!plan || plan.land >= plan.height) return [];
  return [
    reliefGrowth(plan, relief.perGrind),
    ...(output.program === 'compensated' ? [reliefWithoutOffsets()] : []),
  ];
}
