import { jobFileEnding, type Job } from '../../core/job';
import { done, failed, type Result } from '../../core/problem';
import { openFile } from '../services/open-file';

/** The job in a file: a job file, or a new job on a drawing. */
export async function openJob(
  path: string,
  core: { jobOnDrawing(fileName: string, bytes: Uint8Array): Job; readJobFile(text: string): Result<Job> },
): Promise<Result<Job>> {
  const opened = await openFile(path);
  if (!opened.ok) return opened;
  const { name, bytes } = opened.value;
  if (!/\.json$/i.test(name)) return done(core.jobOnDrawing(name, bytes));
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return failed(
      'job-not-text',
      'The job file is not text in UTF-8',
      path,
      `Give a ${jobFileEnding} file as it was saved.`,
    );
  }
  const job = core.readJobFile(text);
  return job.ok
    ? job
    : { ok: false, problem: { ...job.problem, where: [path, job.problem.where].filter(Boolean).join(', ') } };
}
