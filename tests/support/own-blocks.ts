import type { Job } from '../../core/job';
import { writeProgram } from '../../core/output/write-program';
import type { Block, Member, Pair, Plan } from '../../core/plan';
import { blockWork, type WorkStep } from '../../core/wire/block-work';

/** A block of its own for a member, its cuts one after the other. */
export const ownBlock = (member: Member): Block => ({
  id: member.id,
  role: member.role,
  part: member.part,
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
  blockWork({ pairs: [pairOf(member)] }, ownBlock(member));

/** The program of one member, as if it had its block to itself. */
export function programOf(member: Member, plan: Plan, job: Job): string {
  return writeProgram(ownBlock(member), { ...plan, pairs: [pairOf(member)] }, job);
}

const pairOf = (member: Member): Pair => ({
  contourId: '',
  use: 'blank',
  gap: 0,
  sizeShift: 0,
  isOneBlock: false,
  die: member,
  punch: member,
  plates: [],
  fit: null,
});
