import type { ProgramSheet } from '../../core/block-program';
import type { SurveyedDrawing } from '../../core/drawing-stages';
import type { Job } from '../../core/job';
import type { OutputFile } from '../../core/output/output-file';
import type { Plan } from '../../core/plan';
import type { Progress } from '../../core/progress';
import type { Result } from '../../core/problem';

export type ReportProgress = Progress;

/** What the worker answers; the pipeline itself on one side, promises of the same on the other. */
export interface CoreWorkerApi {
  plan(job: Job, progress: ReportProgress): Result<Plan>;
  files(job: Job): Result<readonly OutputFile[]>;
  survey(job: Job, progress: ReportProgress): Result<SurveyedDrawing>;
  program(job: Job, blockId: string): Result<ProgramSheet>;
}

/** A running worker as the client sees it. */
export interface CoreConnection {
  plan(job: Job, progress: ReportProgress): Promise<Result<Plan>>;
  files(job: Job): Promise<Result<readonly OutputFile[]>>;
  survey(job: Job, progress: ReportProgress): Promise<Result<SurveyedDrawing>>;
  program(job: Job, blockId: string): Promise<Result<ProgramSheet>>;
  /** Resolves, with what is known of the cause, when the worker has died by itself; never otherwise. */
  readonly died: Promise<string>;
  end(): void;
}
