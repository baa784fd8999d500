import { programSheet } from '../../../core/block-program';
import type { SurveyedDrawing } from '../../../core/drawing-stages';
import type { Finding } from '../../../core/finding';
import { newJob, type Job } from '../../../core/job';
import type { Plan } from '../../../core/plan';
import { done, type Result } from '../../../core/problem';
import type { AppState } from '../../../renderer/state/app-state';
import { createApp, type App } from '../../../renderer/state/app-store';
import { newHistory } from '../../../renderer/state/history';
import { CoreClient } from '../../../renderer/worker/core-client';
import type { CoreConnection, ReportProgress } from '../../../renderer/worker/messages';
import { planOf } from '../../support/plan-of';
import { memoryHost, type MemoryHost } from './memory-host';
import { noInspection } from './no-inspection';

export interface TestApp extends App {
  readonly host: MemoryHost;
}

export const testJob: Job = newJob('bracket.dxf', 'unread');

/** The plan of a 20 × 10 mm blank with these findings. */
export const testPlan = (findings: readonly Finding[] = [], job: Job = testJob): Plan =>
  planOf({
    width: 20,
    height: 10,
    radius: 0.5,
    clearance: 0.06,
    job,
    findings,
    released: findings.length === 0,
  });

/** What is to be seen of a drawing of 20 × 10 units that states none. */
export const testSurvey = (): SurveyedDrawing => ({
  format: 'dxf',
  units: [
    { unit: 'mm', width: 20, height: 10, isStated: false, isUsual: true },
    { unit: 'inch', width: 508, height: 254, isStated: false, isUsual: true },
  ],
  layers: [{ name: '0', pieces: 1, hidden: null }],
  colours: [{ colour: 7, pieces: 1 }],
  gaps: null,
  lines: [],
  drawing: null,
});

/** A window without a page: its core answers at once with what the test says. */
export function testApp(
  initial: Partial<AppState> = {},
  answer: (job: Job, progress: ReportProgress) => Result<Plan> | Promise<Result<Plan>> = (job) =>
    done(testPlan([], job)),
): TestApp {
  const connection: CoreConnection = {
    ...noInspection,
    plan: (job, progress) => Promise.resolve(answer(job, progress)),
    files: () => Promise.resolve(done([{ name: 'bracket.dxf', text: '0\nEOF\n' }])),
    survey: () => Promise.resolve(done(testSurvey())),
    program: async (job, blockId) => {
      const planned = await answer(job, () => undefined);
      if (!planned.ok) return planned;
      const block = planned.value.blocks.find(({ id }) => id === blockId);
      if (!block) throw new Error(`no block ${blockId}`);
      return done(programSheet(block, planned.value, job));
    },
    verify: () =>
      Promise.resolve(done({ belongs: true, blockId: 'blank-1-die', say: 'It belongs to this job.' })),
    died: new Promise(() => {}),
    end: () => {},
  };
  const host = memoryHost();
  return { ...createApp(host, new CoreClient(() => connection), initial), host };
}

/** The same with a job open and its plan made. */
export function openTestApp(findings: readonly Finding[] = []): TestApp {
  return testApp(
    {
      history: newHistory(testJob),
      file: { token: null, saved: testJob },
      made: { job: testJob, plan: testPlan(findings) },
    },
    (job) => done(testPlan(findings, job)),
  );
}
