import type { StartHole } from '../../plan';
import type { WorkStep } from '../../wire/block-work';

/** A start hole with the number it has on the sheet. */
export interface NamedHole {
  readonly name: string;
  readonly hole: StartHole;
  readonly memberId: string;
}

/** Every start hole of a block once, numbered in the order of work. */
export function startHoles(work: readonly WorkStep[]): readonly NamedHole[] {
  const holes: NamedHole[] = [];
  for (const { start, member } of work) {
    if (!start || holes.some(({ hole }) => hole === start)) continue;
    holes.push({ name: String(holes.length + 1), hole: start, memberId: member.id });
  }
  return holes;
}
