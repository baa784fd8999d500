import type { DrawingSize } from '../../core/drawing/drawing';
import type { Job } from '../../core/job';
import type { OutputFile } from '../../core/output/output-file';
import type { Plan } from '../../core/plan';
import { failed, type Result } from '../../core/problem';
import type { CoreConnection, ReportProgress } from './messages';

/** A reply that a newer question has overtaken: whoever gets it does nothing. */
export const stale = Symbol('stale');

/**
 * The page's side of the worker. Plans are asked for faster than they can be made while someone turns a value, so
 * only the newest waits; every reply carries the revision it was asked for and an overtaken one comes back as
 * `stale`. A worker that dies is started again and the question asked once more; if it dies over the same question
 * twice, that is a problem with its words.
 */
export class CoreClient {
  readonly #start: () => CoreConnection;
  #connection: CoreConnection | null = null;
  #revision = 0;
  #running: Promise<unknown> = Promise.resolve();

  constructor(start: () => CoreConnection) {
    this.#start = start;
  }

  async plan(job: Job, progress: ReportProgress): Promise<Result<Plan> | typeof stale> {
    const revision = ++this.#revision;
    const isStale = () => revision !== this.#revision;
    // Wait for the plan in the making; whoever was overtaken meanwhile never reaches the worker.
    const before = this.#running;
    await before;
    if (isStale()) return stale;
    // Progress comes on a channel of its own and may arrive after the answer.
    let isAnswered = false;
    const reply = this.#ask((connection) =>
      connection.plan(job, (step, fraction) => {
        if (!isAnswered && !isStale()) progress(step, fraction);
      }),
    );
    this.#running = reply;
    const result = await reply;
    isAnswered = true;
    return isStale() ? stale : result;
  }

  files(job: Job): Promise<Result<readonly OutputFile[]>> {
    return this.#ask((connection) => connection.files(job));
  }

  drawingSize(job: Job): Promise<Result<DrawingSize>> {
    return this.#ask((connection) => connection.drawingSize(job));
  }

  /** Lets no plan asked for so far come back. */
  forget(): void {
    this.#revision++;
  }

  end(): void {
    this.#connection?.end();
    this.#connection = null;
  }

  /** Never rejects: what goes wrong comes back as a problem. */
  async #ask<T>(question: (connection: CoreConnection) => Promise<Result<T>>): Promise<Result<T>> {
    let cause = '';
    for (let attempt = 0; attempt < 2; attempt++) {
      const connection = (this.#connection ??= this.#start());
      const answer = await Promise.race([
        question(connection).catch((error: unknown) => bugOf(error)),
        connection.died.then((words) => ({ died: words })),
      ]);
      if (!('died' in answer)) return answer;
      cause = answer.died;
      connection.end();
      if (this.#connection === connection) this.#connection = null;
    }
    return failed(
      'calculation-stopped',
      'The calculation stopped twice over this job',
      cause,
      'Undo the last change; if it stops again, save the job and report it with the file.',
    );
  }
}

function bugOf(error: unknown): { ok: false; problem: ReturnType<typeof failed>['problem'] } {
  return failed(
    'calculation-failed',
    'The calculation met a case that it does not know',
    error instanceof Error ? error.message : String(error),
    'Undo the last change, and report this with the job file.',
  );
}
