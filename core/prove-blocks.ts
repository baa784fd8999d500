import { blockProgram } from './block-program';
import { knownStock } from './check/known-stock';
import { programFindings } from './check/program-findings';
import { proofFindings } from './check/proof-findings';
import { proveProgram, type ProgramProof } from './check/prove-program';
import { unproved } from './check/unproved';
import type { Finding } from './finding';
import type { Job } from './job';
import type { Block, Member, Plan } from './plan';
import { invariant } from './problem';
import { membersOf } from './wire/members-of';

/** The verdict on every member, and what the proofs found. */
export interface BlockProofs {
  readonly proofOf: (member: Member) => Member['proof'];
  readonly findings: readonly Finding[];
}

/** A program's text with its proof. */
interface ProvedText {
  readonly text: string;
  readonly proof: ProgramProof;
}

/**
 * Proves all blocks of a plan from the text of their programs, as they will be written once the plan is released. The
 * proof of a text is remembered with the members that it cuts, so that only what changed is proved anew.
 */
export function createProver(): (plan: Plan, job: Job) => BlockProofs {
  const known = new WeakMap<Member, ProvedText>();

  const prove = (block: Block, plan: Plan, job: Job, members: readonly Member[]): ProvedText => {
    const program = blockProgram(block, { ...plan, released: true }, job);
    const { text } = program;
    const [first] = members;
    const before = first && known.get(first);
    if (before?.text === text && members.every((member) => known.get(member) === before)) return before;
    const proof = proveProgram({ ...program, members, reach: plan.reach[block.part] });
    const entry = { text, proof };
    for (const member of members) known.set(member, entry);
    return entry;
  };

  return (plan, job) => {
    const proofs = new Map<string, Member['proof']>();
    const findings: Finding[] = [];
    const all = membersOf(plan);
    for (const block of plan.blocks) {
      const members = block.memberIds.map((id) => {
        const member = all.find((one) => one.id === id);
        invariant(member, `no member ${id} in block ${block.id}`);
        return member;
      });
      const { proof } = prove(block, plan, job, members);
      findings.push(...programFindings(block.id, proof.faults), ...proof.ofReliefs);
      for (const member of members) {
        const own = proof.proofs.get(member.id) ?? unproved;
        proofs.set(member.id, own);
        const known = knownStock(member, plan.reach[member.part], proof.rounder);
        findings.push(...proofFindings(member.id, member.contourId, own, known));
      }
    }
    // Out of one block the punch is what the die's cut leaves.
    for (const { die, punch, isOneBlock } of plan.pairs) {
      if (isOneBlock) proofs.set(punch.id, proofs.get(die.id) ?? unproved);
    }
    return { proofOf: ({ id }) => proofs.get(id) ?? unproved, findings };
  };
}
