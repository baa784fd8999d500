import type { IntendedMoves } from './check/intended-moves';
import type { ProgramDialect } from './check/program-dialect';
import type { Job } from './job';
import { intendedMoves } from './output/intended-moves';
import { offsetNumber, programSteps, writableKind } from './output/program-steps';
import { writeProgram } from './output/write-program';
import type { Block, Plan } from './plan';
import { programDialectOf } from './program-dialect-of';
import { blockWork } from './wire/block-work';

/** A block's program as its file holds it, and what is needed to read it and to hold it against what was meant. */
export interface BlockProgram {
  readonly text: string;
  readonly dialect: ProgramDialect;
  /** Entries of the control's offset table, mm by number. */
  readonly offsets: ReadonlyMap<number, number>;
  readonly intended: IntendedMoves;
}

/** The program of a block; a draft where the plan is not released. */
export function blockProgram(block: Block, plan: Plan, job: Job): BlockProgram {
  const { style, program } = job.output;
  const work = blockWork(plan, block);
  const steps = programSteps(work, writableKind(work, program));
  const passes = work.flatMap(({ cut }) => cut.passes);
  const registerOf = (entry: number) => style.offsets.first + entry - 1;
  return {
    text: writeProgram(block, plan, job),
    dialect: programDialectOf(style),
    offsets: new Map(passes.map((pass) => [registerOf(offsetNumber(pass)), pass.offset])),
    intended: intendedMoves(steps, style),
  };
}
