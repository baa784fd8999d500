import { failed, type Problem, type Result } from './problem';
import { readOwnFile } from './read-own-file';
import { sayLength } from './say';
import {
  technologyFileEnding,
  technologyFormat,
  technologySchema,
  technologyVersion,
  type Technology,
} from './technology';
import { passOffsets } from './wire/pass-offsets';

/** The table as text, the same for the same table. */
export function writeTechnologyFile(technology: Technology): string {
  const file = {
    format: technologyFormat,
    version: technologyVersion,
    ...technologySchema.parse(technology),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** Reads a technology table; rows that contradict each other or cut air are refused with their sentence. */
export function readTechnologyFile(text: string): Result<Technology> {
  const read = readOwnFile(text, {
    code: 'technology',
    noun: 'technology table',
    format: technologyFormat,
    version: technologyVersion,
    ending: technologyFileEnding,
    schema: technologySchema,
  });
  if (!read.ok) return read;
  const problem = technologyProblem(read.value);
  return problem ? { ok: false, problem } : read;
}

/** Why a table cannot be cut by: rows that contradict each other, passes that cut air or leave stock; null: it can. */
export function technologyProblem({ rows }: Technology): Problem | null {
  for (const [k, row] of rows.entries()) {
    const where = `row ${k + 1}: ${sayLength(row.wire)} wire up to ${sayLength(row.height)}`;
    if (rows.findIndex((one) => one.wire === row.wire && one.height === row.height) < k) {
      return failed(
        'technology-twice',
        'The technology table has two rows for the same wire and height',
        where,
        'Take one of them out.',
      ).problem;
    }
    const offsets = passOffsets(
      row.wire,
      row.passes.map((pass) => ({ ...pass, feed: pass.rate / row.height })),
    );
    if (!offsets.ok) return { ...offsets.problem, where: `${where}, ${offsets.problem.where}` };
  }
  return null;
}
