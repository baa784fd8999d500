import type { ProgramVerdict } from '../../core/output/verify-program';
import type { Job } from '../../core/job';
import { done, type Result } from '../../core/problem';
import { openFile } from '../services/open-file';
import { exitCodes, type ExitCode } from './exit-codes';

/** Holds program files against a job, a line each; ends as released only if all of them belong to it. */
export async function verifyPrograms(
  job: Job,
  paths: readonly string[],
  core: { verify(job: Job, text: string): Result<ProgramVerdict> },
  speech: { out(text: string): void },
): Promise<Result<ExitCode>> {
  let code: ExitCode = exitCodes.released;
  for (const path of paths) {
    const opened = await openFile(path);
    if (!opened.ok) return opened;
    const verdict = core.verify(job, new TextDecoder('utf-8').decode(opened.value.bytes));
    if (!verdict.ok) return verdict;
    const { belongs, blockId, say } = verdict.value;
    speech.out(
      `${belongs ? 'belongs' : 'DOES NOT BELONG'}  ${path}${blockId ? ` (${blockId})` : ''}\n  ${say}`,
    );
    if (!belongs) code = exitCodes.draft;
  }
  return done(code);
}
