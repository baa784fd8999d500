import type { IntendedMoves } from './check/intended-moves';
import type { ProgramDialect } from './check/program-dialect';
import { readProgram } from './check/read-program';
import { plannedFeeds } from './check/same-moves';
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

/** A program to be looked at and played, as its file holds it. */
export interface ProgramSheet extends Pick<BlockProgram, 'text' | 'dialect' | 'offsets'> {
  readonly blockId: string;
  /** mm/min by move, where the program leaves its feeds to the control; null: the program says them. */
  readonly feeds: readonly number[] | null;
}

/** A block's program with all that is needed to play it. */
export function programSheet(block: Block, plan: Plan, job: Job): ProgramSheet {
  const { text, dialect, offsets, intended } = blockProgram(block, plan, job);
  const reading = dialect.saysFeeds ? null : readProgram(text, dialect);
  return {
    blockId: block.id,
    text,
    dialect,
    offsets,
    feeds: reading?.ok ? plannedFeeds(reading.value, intended) : null,
  };
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
