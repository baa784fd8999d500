import { proxy, wrap } from 'comlink';
import type { CoreConnection, CoreWorkerApi } from './messages';

/** Starts the pipeline's worker. */
export function startWorker(): CoreConnection {
  const worker = new Worker(new URL('./core-worker.ts', import.meta.url), { type: 'module' });
  const remote = wrap<CoreWorkerApi>(worker);
  const died = new Promise<string>((resolve) => {
    worker.addEventListener('error', (event) => {
      resolve(event.message || 'the calculation could not be loaded');
    });
    worker.addEventListener('messageerror', () => resolve('a message could not be read'));
  });
  return {
    plan: (job, progress) => remote.plan(job, proxy(progress)),
    files: (job) => remote.files(job),
    clearance: (job, view) => remote.clearance(job, view),
    evenPosition: (job, view) => remote.evenPosition(job, view),
    measured: (job) => remote.measured(job),
    revision: (question) => remote.revision(question),
    survey: (job, progress) => remote.survey(job, proxy(progress)),
    program: (job, blockId) => remote.program(job, blockId),
    verify: (job, text) => remote.verify(job, text),
    died,
    end: () => worker.terminate(),
  };
}
