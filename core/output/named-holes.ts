import type { Member, Plan, StartHole } from '../plan';
import { membersOf } from '../wire/members-of';

/** A start hole as the drill list and the threading list name it. */
export interface NamedHole {
  readonly name: string;
  readonly blockId: string;
  readonly member: Member;
  readonly cutId: string;
  readonly hole: StartHole;
}

/**
 * Every hole that the wire is threaded through, block by block in the order in which they are first used: H1, H2, … A
 * start from the block's edge has no hole. A hole that two cuts share has two names at one place.
 */
export function namedHoles(plan: Pick<Plan, 'pairs' | 'blocks'>): readonly NamedHole[] {
  const named = known.get(plan);
  if (named) return named;
  const holes = nameHoles(plan);
  known.set(plan, holes);
  return holes;
}

/** Lists ask block by block: naming all holes each time would take as long as there are blocks, squared. */
const known = new WeakMap<object, readonly NamedHole[]>();

function nameHoles(plan: Pick<Plan, 'pairs' | 'blocks'>): readonly NamedHole[] {
  const members = new Map(membersOf(plan).map((member) => [member.id, member]));
  const holes: NamedHole[] = [];
  for (const block of plan.blocks) {
    const seen = new Set<StartHole>();
    for (const { memberId, cut: index, threading } of block.order) {
      const member = members.get(memberId);
      const cut = member?.cuts[index];
      const hole = cut?.starts[cut.threadings[threading]?.start ?? 0];
      if (!member || !cut || !hole || hole.kind === 'edge' || seen.has(hole)) continue;
      seen.add(hole);
      holes.push({ name: `H${holes.length + 1}`, blockId: block.id, member, cutId: cut.id, hole });
    }
  }
  return holes;
}
