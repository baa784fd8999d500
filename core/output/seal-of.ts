import { fingerprint } from '../fingerprint';
import type { Job } from '../job';
import { drawingBytes } from '../job-file';
import type { Seal } from './program-seal';

/** What a job and its drawing are known by; `jobFileText` is the job as its file holds it. */
export const sealOf = (job: Job, jobFileText: string): Seal => ({
  job: fingerprint(jobFileText),
  drawing: fingerprint(drawingBytes(job.drawing.content)),
});
