import { isAbsolute, join, relative, resolve } from 'node:path';
import type { FollowedJob } from '../../core/follow-contours';
import type { SurveyedDrawing } from '../../core/drawing-stages';
import type { UnitCandidate } from '../../core/drawing/unit-candidates';
import type { ProgramVerdict } from '../../core/output/verify-program';
import type { Job } from '../../core/job';
import type { OutputFile } from '../../core/output/output-file';
import { writeSummary } from '../../core/output/write-summary';
import type { Plan } from '../../core/plan';
import { sayProblem, type Problem, type Result } from '../../core/problem';
import { mmPerInch } from '../../core/units';
import { writeFilesTogether } from '../services/write-files-together';
import { changeJob } from './change-job';
import { exitCodes, type ExitCode } from './exit-codes';
import { helpText } from './help-text';
import { optionFiles } from './option-files';
import { openJob } from './open-job';
import { readArguments } from './read-arguments';
import { verifyPrograms } from './verify-programs';

/** The part of core that the command needs. */
export interface HeadlessCore {
  jobOnDrawing(fileName: string, bytes: Uint8Array): Job;
  readJobFile(text: string): Result<Job>;
  survey(job: Job): Result<SurveyedDrawing>;
  followed(before: Job, job: Job): FollowedJob;
  plan(job: Job): Result<Plan>;
  files(job: Job): Result<readonly OutputFile[]>;
  /** Whether a program on disk still belongs to the job. */
  verify(job: Job, text: string): Result<ProgramVerdict>;
  /** The sheets as PDF, and their tables. */
  sheets(job: Job, plan: Plan): Result<readonly OutputFile[]>;
}

/** Where the command speaks to; a line each. */
export interface Speech {
  out(text: string): void;
  error(text: string): void;
}

/**
 * The whole job without a window: reads, plans, writes all files or none, and says the summary. Whatever goes wrong
 * with the input is one line on the error side and leaves the folder as it was.
 */
export async function runHeadless(
  argv: readonly string[],
  core: HeadlessCore,
  speech: Speech,
): Promise<ExitCode> {
  const read = readArguments(argv);
  if (!read.ok) return inputError(read.problem, speech);
  if (read.value.help) {
    speech.out(helpText());
    return exitCodes.released;
  }
  const { file, out, changes, verify } = read.value;

  const opened = await openJob(file, core);
  if (!opened.ok) return inputError(opened.problem, speech);
  if (verify) {
    const verified = await verifyPrograms(opened.value, verify, core, speech);
    return verified.ok ? verified.value : inputError(verified.problem, speech);
  }
  const parts = await optionFiles(changes);
  if (!parts.ok) return inputError(parts.problem, speech);
  const changed = changeJob(opened.value, changes, parts.value);
  if (!changed.ok) return inputError(changed.problem, speech);
  // Another unit or gap tolerance may number the contours anew.
  const isReadAnew = changed.value.drawing !== opened.value.drawing;
  const followed = isReadAnew ? core.followed(opened.value, changed.value) : { job: changed.value, lost: [] };
  if (followed.lost.length > 0)
    speech.error(
      `Contour ${followed.lost.join(', ')} is no longer there, and what was chosen for it is gone.`,
    );
  const { job } = followed;
  const plan = core.plan(job);
  if (!plan.ok) return inputError(withUnitsSaid(plan.problem, job, core), speech);
  const files = core.files(job);
  if (!files.ok) return inputError(files.problem, speech);
  const sheets = core.sheets(job, plan.value);
  if (!sheets.ok) return inputError(sheets.problem, speech);
  const written = await writeFilesTogether(out, [...files.value, ...sheets.value]);
  if (!written.ok) return inputError(written.problem, speech);

  speech.out(writeSummary(plan.value, job));
  speech.out(`Files\n${written.value.map((path) => `  ${shortPath(path)}\n`).join('')}`);
  return plan.value.released ? exitCodes.released : exitCodes.draft;
}

/** A drawing without a unit: the sizes the part would have tell a person which unit is meant. */
function withUnitsSaid(problem: Problem, job: Job, core: HeadlessCore): Problem {
  if (problem.code !== 'units-needed') return problem;
  const survey = core.survey(job);
  if (!survey.ok) return problem;
  const choices = survey.value.units.map((candidate) => `--unit ${candidate.unit} (${sizes(candidate)})`);
  return { ...problem, whatToDo: `Say which by how large the part is: ${choices.join(', ')}.` };
}

function sizes({ width, height }: UnitCandidate): string {
  const inch = (mm: number): string => short(mm / mmPerInch);
  return `${short(width)} × ${short(height)} mm, ${inch(width)} × ${inch(height)} in`;
}

function inputError(problem: Problem, speech: Speech): ExitCode {
  speech.error(sayProblem(problem).replace(/\s+/g, ' '));
  return exitCodes.inputError;
}

const short = (length: number): string => String(Number(length.toPrecision(4)));

function shortPath(path: string): string {
  const fromHere = relative(process.cwd(), resolve(path));
  return fromHere.startsWith('..') || isAbsolute(fromHere) ? path : join('.', fromHere);
}
