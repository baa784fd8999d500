import { z } from 'zod';
import { jobFormat, jobSchema, jobVersion, newJob, type Job } from './job';
import { nameOfPath } from './name-of-path';
import { done, failed, type Result } from './problem';
import { sayIssue } from './say-issue';

/** A new job on a drawing's bytes, kept one character a byte, so that the job file holds the whole drawing. */
export function jobOnDrawing(fileName: string, bytes: Uint8Array): Job {
  const parts: string[] = [];
  // In parts: a call with a million arguments overflows the stack.
  for (let k = 0; k < bytes.length; k += 8192)
    parts.push(String.fromCharCode(...bytes.subarray(k, k + 8192)));
  return newJob(fileName, parts.join(''));
}

/** The drawing's bytes as they came. */
export function drawingBytes(content: string): Uint8Array {
  const bytes = new Uint8Array(content.length);
  for (let k = 0; k < content.length; k++) bytes[k] = content.charCodeAt(k);
  return bytes;
}

/** The job as text, the same for the same job: keys in the schema's order, two spaces, a final line end. */
export const writeJobFile = (job: Job): string => `${JSON.stringify(jobSchema.parse(job), null, 2)}\n`;

/** Reads a job file: not JSON, another format, a newer version and every wrong field get their sentence. */
export function readJobFile(text: string): Result<Job> {
  const parsed = parseJson(text);
  if (parsed === undefined) {
    return failed(
      'job-not-json',
      'The job file cannot be read: it is not whole',
      '',
      'Open an earlier copy of it, or start a new job from the drawing.',
    );
  }
  const head = z.looseObject({ format: z.literal(jobFormat), version: z.int().positive() }).safeParse(parsed);
  if (!head.success) {
    return failed(
      'job-not-ours',
      'This is not a Diewright job file',
      '',
      'Choose a file that ends in .diewright.json.',
    );
  }
  if (head.data.version > jobVersion) {
    return failed(
      'job-newer',
      `The job was saved by a newer Diewright (job version ${head.data.version}, this one reads ${jobVersion})`,
      '',
      'Open it with the newer program.',
    );
  }
  const job = jobSchema.safeParse(parsed, { reportInput: true });
  if (job.success) return done(job.data);
  const [issue] = job.error.issues;
  return failed(
    'job-field',
    `The job file has a value that cannot be used: ${nameOfPath(issue?.path ?? [], 'the file')} ${issue ? sayIssue(issue) : 'is wrong'}`,
    issue?.path.join('.') ?? '',
    'Correct it in the file, or start a new job from the drawing.',
  );
}

/** Reads a draft: a job whose drawing is kept apart from it. */
export function jobOfDraft(text: string, drawing: string): Result<Job> {
  const job = readJobFile(text);
  return job.ok ? done({ ...job.value, drawing: { ...job.value.drawing, content: drawing } }) : job;
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
