import type { Job } from '../../core/job';
import { writeProgram } from '../../core/output/write-program';
import type { Block, Member, Plan } from '../../core/plan';
import { blockWork, type WorkStep } from '../../core/wire/block-work';

/** A block of its own for a member, its cuts one after the other. */
export const ownBlock = (member: Member): Block => ({
  id: member.id,
  role: member.role,
  memberIds: [member.id],
  outline: { minX: -50, minY: -50, maxX: 50, maxY: 50 },
  clamps: [],
  frame: 5,
  sites: {},
  order: member.cuts.flatMap((cut, index) =>
    cut.threadings.map((_, threading) => ({ memberId: member.id, cut: index, threading })),
  ),
  travel: 0,
});

/** The work of one member, as if it had its block to itself. */
export const workOn = (member: Member): readonly WorkStep[] =>
  blockWork(
    { pairs: [{ contourId: '', use: 'blank', die: member, punch: member, fit: null }] },
    ownBlock(member),
  );

/** The program of one member, as if it had its block to itself. */
export function programOf(member: Member, plan: Plan, job: Job): string {
  const pairs = [{ contourId: '', use: 'blank', die: member, punch: member, fit: null }] as const;
  return writeProgram(ownBlock(member), { ...plan, pairs }, job);
}
