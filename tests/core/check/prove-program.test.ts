import { describe, expect, it } from 'vitest';
import { blockProgram, type BlockProgram } from '../../../core/block-program';
import { intendedOf } from '../../support/intended-of';
import { mutantsOf } from '../../support/program-mutants';
import { proveProgram, type ProgramProof } from '../../../core/check/prove-program';
import { readProgram } from '../../../core/check/read-program';
import { wirePath } from '../../../core/check/wire-path';
import { newJob, type Job } from '../../../core/job';
import type { Block, Plan } from '../../../core/plan';
import { contourMoves, distanceToMoves, pointsOfMove } from '../../support/move-distance';
import type { PlainMove } from '../../support/move-distance';
import { exampleParts, planOf } from '../../support/plan-of';

interface Example {
  readonly name: string;
  readonly plan: Plan;
  readonly block: Block;
  readonly program: BlockProgram;
}

/** Die and punch of the worked example [D], with two passes, as wire centre and with offsets. */
const examples: readonly Example[] = (['wire centre', 'compensated'] as const).flatMap((kind) => {
  const parts = exampleParts({ program: kind });
  const [rough, , last] = newJob('', '').passes as [Job['passes'][0], Job['passes'][0], Job['passes'][0]];
  const job: Job = { ...parts.job, passes: [rough, last] };
  const plan = planOf({ ...parts, job });
  return plan.blocks.map((block) => ({
    name: `${block.id}, ${kind}`,
    plan,
    block,
    program: blockProgram(block, plan, job),
  }));
});

function prove({ plan, block, program }: Example, change: Partial<BlockProgram> = {}): ProgramProof {
  const members = plan.pairs.flatMap(({ die, punch }) => [die, punch]);
  return proveProgram({
    ...program,
    ...change,
    members: members.filter(({ id }) => block.memberIds.includes(id)),
    reach: plan.reach[block.part],
  });
}

const passed = ({ proofs, faults }: ProgramProof): boolean =>
  faults.length === 0 && [...proofs.values()].every((proof) => proof.passed && proof.remainder < 0.001);

describe.each(examples)('the proof of $name', (example) => {
  const { text, offsets } = example.program;
  const mutants = mutantsOf(text);

  it('passes the program as it is written', () => {
    const proof = prove(example);
    expect(proof.faults).toEqual([]);
    expect(passed(proof)).toBe(true);
  });

  it('catches every change of one digit or word, of an arc or a line, unless it changes nothing that is cut', () => {
    expect(mutants.length).toBeGreaterThan(300);
    const original = meaningOf(text, offsets);
    const missed = mutants.filter((mutant) => {
      if (!passed(prove(example, { text: mutant.text }))) return false;
      return !isSameCut(original, meaningOf(mutant.text, offsets));
    });
    expect(missed.map(({ what }) => what)).toEqual([]);
  });

  it('catches what is cut wrongly by the sweep alone, where nothing is held against the plan', () => {
    const { plan, block } = example;
    const member = plan.pairs
      .flatMap(({ die, punch }) => [die, punch])
      .find(({ id }) => id === block.memberIds[0]);
    const contour = member?.designed[0];
    if (!contour) throw new Error('no contour');
    const reach = plan.reach[block.role];
    const outline = contourMoves(contour);
    const onContour = outline.flatMap((move) => pointsOfMove(move, 0.25));
    let harmful = 0;
    const missed = mutants.filter(({ text: mutant }) => {
      const intended = intendedOf(mutant);
      const meaning = meaningOf(mutant, offsets);
      if (!intended || !meaning) return false;
      // By slow distances that share nothing with the proof: into the member by more than it may overlook, or stock left.
      const cutting = meaning.path.filter(({ isRapid }) => !isRapid).map(({ move }) => move);
      const wire = cutting.flatMap((move) => pointsOfMove(move, 0.25));
      const nearest = Math.min(...wire.map((point) => distanceToMoves(point, outline)));
      const farthest = Math.max(...onContour.map((point) => distanceToMoves(point, cutting)));
      if (nearest > reach - 0.001 && farthest < reach + 0.001) return false;
      harmful++;
      return passed(prove(example, { text: mutant, intended }));
    });
    expect(harmful).toBeGreaterThan(100);
    expect(missed.map(({ what }) => what)).toEqual([]);
  });
});

interface Meaning {
  readonly path: readonly { readonly move: PlainMove; readonly isRapid: boolean }[];
  readonly rest: string;
}

/** What a program says, as far as it can be read. */
function meaningOf(text: string, offsets: ReadonlyMap<number, number>): Meaning | null {
  const reading = readProgram(text);
  if (!reading.ok) return null;
  const path = wirePath(reading.value, offsets).moves.map(({ from, to, centre, turn, isRapid }) => ({
    move: { from, to, centre, counterClockwise: turn > 0 },
    isRapid,
  }));
  const { unit, pauses, moves } = reading.value;
  const rest = [
    unit,
    pauses.map(({ kind, afterMoves }) => [kind, afterMoves]),
    moves.map(({ kind, side, register, feed }) => [kind, side, register, feed]),
  ];
  return { path, rest: JSON.stringify(rest) };
}

/** Whether two programs cut the same within three last decimals, with the same stops, feeds and offsets. */
function isSameCut(a: Meaning | null, b: Meaning | null): boolean {
  if (!a || !b || a.rest !== b.rest) return false;
  const isWithin = (one: Meaning, other: Meaning) => {
    const moves = other.path.map(({ move }) => move);
    return one.path
      .flatMap(({ move }) => pointsOfMove(move, 0.25))
      .every((point) => distanceToMoves(point, moves) < 3.5e-5);
  };
  return isWithin(a, b) && isWithin(b, a);
}
