import type { ProgramSheet } from '../../core/block-program';
import type { ProgramVerdict } from '../../core/output/verify-program';
import type { SurveyedDrawing } from '../../core/drawing-stages';
import type { EvenPosition } from '../../core/inspect/even-position';
import type { MeasuredParts } from '../../core/inspect/inspection';
import type { PairClearance } from '../../core/inspect/pair-clearance';
import type { PairView } from '../../core/inspector';
import type { Job } from '../../core/job';
import type { OutputFile } from '../../core/output/output-file';
import type { Plan } from '../../core/plan';
import { failed, type Result } from '../../core/problem';
import type { Revision, RevisionQuestion } from '../../core/revision';
import type { CoreConnection, ReportProgress } from './messages';

/** A reply that a newer question has overtaken: whoever gets it does nothing. */
export const stale = Symbol('stale');

/** How long a plan in the making may keep a newer question waiting, ms: longer than most plans, shorter than a sigh. */
const usualPatience = 1500;

interface Running {
  readonly connection: CoreConnection;
  /** Resolves when the worker is let go of while it still computes. */
  readonly abandoned: Promise<{ readonly died: string }>;
  abandon(): void;
}

/**
 * The page's side of the worker. Plans are asked for faster than they can be made while someone turns a value, so
 * only the newest question waits; every reply carries the revision it was asked for and an overtaken one comes back as
 * `stale`. A question that keeps a newer question waiting too long is given up together with its worker. A worker that
 * dies is started again and the question asked once more; if it dies over the same question twice, that is a problem
 * with its words.
 */
export class CoreClient {
  readonly #start: () => CoreConnection;
  readonly #patience: number;
  #running: Running | null = null;
  #revision = 0;
  #working: Promise<unknown> = Promise.resolve();

  constructor(start: () => CoreConnection, patience = usualPatience) {
    this.#start = start;
    this.#patience = patience;
  }

  /** Starts the worker before there is a question for it: loading it takes as long as reading a small drawing. */
  warmUp(): void {
    this.#running ??= this.#run();
  }

  /** What is to be seen of the drawing as such. */
  survey(job: Job, progress: ReportProgress): Promise<Result<SurveyedDrawing> | typeof stale> {
    return this.#newest((connection, tell) => connection.survey(job, tell), progress);
  }

  plan(job: Job, progress: ReportProgress): Promise<Result<Plan> | typeof stale> {
    return this.#newest((connection, tell) => connection.plan(job, tell), progress);
  }

  files(job: Job): Promise<Result<readonly OutputFile[]>> {
    return this.#ask((connection) => connection.files(job), always);
  }

  /** Whether a program on disk still belongs to the job. */
  verify(job: Job, text: string): Promise<Result<ProgramVerdict>> {
    return this.#ask((connection) => connection.verify(job, text), always);
  }

  /** One block's program; `stale` where a plan was asked for meanwhile. */
  async program(job: Job, blockId: string): Promise<Result<ProgramSheet> | typeof stale> {
    const revision = this.#revision;
    const isWanted = () => revision === this.#revision;
    const result = await this.#ask((connection) => connection.program(job, blockId), isWanted);
    return isWanted() ? result : stale;
  }

  clearance(job: Job, view: PairView): Promise<Result<PairClearance>> {
    return this.#ask((connection) => connection.clearance(job, view), always);
  }

  evenPosition(job: Job, view: PairView): Promise<Result<EvenPosition>> {
    return this.#ask((connection) => connection.evenPosition(job, view), always);
  }

  measured(job: Job): Promise<Result<MeasuredParts>> {
    return this.#ask((connection) => connection.measured(job), always);
  }

  revision(question: RevisionQuestion): Promise<Result<Revision>> {
    return this.#ask((connection) => connection.revision(question), always);
  }

  /** Lets no plan asked for so far come back. */
  forget(): void {
    this.#revision++;
  }

  /** Stops whatever is being worked out, together with its worker; its reply comes back as `stale`. */
  stop(): void {
    this.forget();
    this.#running?.abandon();
  }

  async #newest<T>(
    question: (connection: CoreConnection, tell: ReportProgress) => Promise<Result<T>>,
    progress: ReportProgress,
  ): Promise<Result<T> | typeof stale> {
    const revision = ++this.#revision;
    const isWanted = () => revision === this.#revision;
    const before = this.#working.then(() => true);
    const isFree = await Promise.race([before, after(this.#patience)]);
    // Whoever was overtaken meanwhile never reaches the worker.
    if (!isWanted()) return stale;
    if (!isFree) this.#running?.abandon();
    // Progress comes on a channel of its own and may arrive after the answer.
    let isAnswered = false;
    const tell: ReportProgress = (...news) => {
      if (!isAnswered && isWanted()) progress(...news);
    };
    const reply = this.#ask((connection) => question(connection, tell), isWanted);
    this.#working = reply;
    const result = await reply;
    isAnswered = true;
    return isWanted() ? result : stale;
  }

  /** Never rejects: what goes wrong comes back as a problem. */
  async #ask<T>(
    question: (connection: CoreConnection) => Promise<Result<T>>,
    isWanted: () => boolean,
  ): Promise<Result<T>> {
    let cause = '';
    for (let attempt = 0; attempt < 2; attempt++) {
      const running = (this.#running ??= this.#run());
      const answer = await Promise.race([
        question(running.connection).catch((error: unknown) => bugOf(error)),
        running.connection.died.then((words) => ({ died: words })),
        running.abandoned,
      ]);
      if (!('died' in answer)) return answer;
      cause = answer.died;
      running.connection.end();
      if (this.#running === running) this.#running = null;
      if (!isWanted()) break;
    }
    return failed(
      'calculation-stopped',
      'The calculation stopped twice over this job',
      cause,
      'Undo the last change; if it stops again, save the job and report it with the file.',
    );
  }

  #run(): Running {
    const connection = this.#start();
    let letGo: (words: { died: string }) => void = () => undefined;
    const abandoned = new Promise<{ died: string }>((resolve) => {
      letGo = resolve;
    });
    const running: Running = {
      connection,
      abandoned,
      abandon: () => {
        connection.end();
        if (this.#running === running) this.#running = null;
        letGo({ died: 'given up for a newer question' });
      },
    };
    return running;
  }
}

const always = () => true;

const after = (milliseconds: number): Promise<false> =>
  new Promise((resolve) => {
    setTimeout(resolve, milliseconds, false);
  });

function bugOf(error: unknown): { ok: false; problem: ReturnType<typeof failed>['problem'] } {
  return failed(
    'calculation-failed',
    'The calculation met a case that it does not know',
    error instanceof Error ? error.message : String(error),
    'Undo the last change, and report this with the job file.',
  );
}
