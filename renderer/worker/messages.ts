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
import type { Progress } from '../../core/progress';
import type { Result } from '../../core/problem';
import type { Revision, RevisionQuestion } from '../../core/revision';

export type ReportProgress = Progress;

/** What the worker answers; the pipeline itself on one side, promises of the same on the other. */
export interface CoreWorkerApi {
  plan(job: Job, progress: ReportProgress): Result<Plan>;
  /** All files, the sheets among them. */
  files(job: Job): Promise<Result<readonly OutputFile[]>>;
  clearance(job: Job, view: PairView): Result<PairClearance>;
  evenPosition(job: Job, view: PairView): Result<EvenPosition>;
  measured(job: Job): Result<MeasuredParts>;
  revision(question: RevisionQuestion): Result<Revision>;
  survey(job: Job, progress: ReportProgress): Result<SurveyedDrawing>;
  program(job: Job, blockId: string): Result<ProgramSheet>;
  verify(job: Job, text: string): Result<ProgramVerdict>;
}

/** A running worker as the client sees it. */
export interface CoreConnection {
  plan(job: Job, progress: ReportProgress): Promise<Result<Plan>>;
  files(job: Job): Promise<Result<readonly OutputFile[]>>;
  clearance(job: Job, view: PairView): Promise<Result<PairClearance>>;
  evenPosition(job: Job, view: PairView): Promise<Result<EvenPosition>>;
  measured(job: Job): Promise<Result<MeasuredParts>>;
  revision(question: RevisionQuestion): Promise<Result<Revision>>;
  survey(job: Job, progress: ReportProgress): Promise<Result<SurveyedDrawing>>;
  program(job: Job, blockId: string): Promise<Result<ProgramSheet>>;
  verify(job: Job, text: string): Promise<Result<ProgramVerdict>>;
  /** Resolves, with what is known of the cause, when the worker has died by itself; never otherwise. */
  readonly died: Promise<string>;
  end(): void;
}
