import type { Block, Cut, CutRun, Member, PassPath, Plan, StartHole, Threading } from '../plan';
import { invariant } from '../problem';
import { membersOf } from './members-of';

/** One threading of a block's order, with everything that it names looked up. */
export interface WorkStep {
  readonly member: Member;
  readonly cut: Cut;
  readonly start: StartHole | null;
  readonly threading: Threading;
  readonly runs: readonly WorkRun[];
}

export interface WorkRun {
  readonly pass: PassPath;
  readonly part: 'main' | 'tabs';
  /** The wire's centre path, and what a control that offsets by itself runs along; null where there is no such contour. */
  readonly path: CutRun;
  readonly contour: CutRun | null;
  /** Why the machine stops before this run; null: it goes on. */
  readonly stop: string | null;
}

/** A block's whole order of work: what its program writes, what is replayed and what is timed. */
export function blockWork(plan: Pick<Plan, 'pairs'>, block: Block): readonly WorkStep[] {
  const members = membersOf(plan);
  return block.order.map(({ memberId, cut: cutIndex, threading: index }) => {
    const member = members.find(({ id }) => id === memberId);
    const cut = member?.cuts[cutIndex];
    const threading = cut?.threadings[index];
    invariant(member && cut && threading, `no threading ${index} of cut ${cutIndex} of ${memberId}`);
    return {
      member,
      cut,
      start: cut.starts[threading.start] ?? null,
      threading,
      runs: runsOf(cut, threading),
    };
  });
}

function runsOf(cut: Cut, threading: Threading): readonly WorkRun[] {
  return threading.runs.map(({ pass: number, part, index, stop }) => {
    const pass = cut.passes.find((one) => one.pass === number);
    const path = pass?.[part][index];
    invariant(pass && path, `no run ${index} of pass ${number} of ${cut.id}`);
    return { pass, part, path, contour: pass.contour?.[part][index] ?? null, stop };
  });
}
