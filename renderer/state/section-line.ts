import type { SectionLine } from '../../core/die/tool-section';
import type { Plan } from '../../core/plan';

/** Where the section strip cuts: the chosen line, or through the middle of the drawing along the strip. */
export function sectionLineOf(plan: Plan, chosen: SectionLine | null): SectionLine {
  if (chosen) return chosen;
  const { step } = plan.dieSet.strip ?? { step: { x: 1, y: 0 } };
  return middleLine(plan, Math.abs(step.y) > Math.abs(step.x) ? 'upright' : 'level');
}

export function middleLine({ drawing: { box } }: Plan, runs: SectionLine['runs']): SectionLine {
  return { runs, at: runs === 'level' ? (box.minY + box.maxY) / 2 : (box.minX + box.maxX) / 2 };
}
