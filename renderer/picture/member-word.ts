import type { Member, Pair } from '../../core/plan';

/** What a member is called where it is pointed at: "Die (blank)", "Opening of the stripper", "Plug". */
export function memberWord(
  { use }: Pick<Pair, 'use'>,
  { role, part }: Pick<Member, 'role' | 'part'>,
): string {
  if (part === 'stripper' || part === 'retainer') return `Opening of the ${part}`;
  if (use === 'mate') return role === 'die' ? 'Hole' : 'Plug';
  return `${role === 'die' ? 'Die' : 'Punch'} (${use})`;
}
