import { jobOnDrawing } from '../../../core/job-file';
import { createPipeline } from '../../../core/pipeline';
import { createApp, type App } from '../../../renderer/state/app-store';
import { newHistory } from '../../../renderer/state/history';
import { keepPlanCurrent } from '../../../renderer/state/keep-plan-current';
import { CoreClient } from '../../../renderer/worker/core-client';
import type { CoreConnection } from '../../../renderer/worker/messages';
import { bytes } from '../../core/drawing/drawn';
import { memoryHost } from './memory-host';
import { noInspection } from './no-inspection';

/** A window without a page on a drawing, its core the real pipeline in this process; resolves when the plan is there. */
export async function drawingApp(dxfText: string): Promise<App & { settled(): Promise<void> }> {
  const pipeline = createPipeline();
  const connection: CoreConnection = {
    ...noInspection,
    plan: (job, progress) => Promise.resolve(pipeline.plan(job, progress)),
    files: (job) => Promise.resolve(pipeline.files(job)),
    survey: (job, progress) => Promise.resolve(pipeline.survey(job, progress)),
    program: (job, blockId) => Promise.resolve(pipeline.program(job, blockId)),
    verify: (job, text) => Promise.resolve(pipeline.verify(job, text)),
    died: new Promise(() => {}),
    end: () => {},
  };
  const job = jobOnDrawing('part.dxf', bytes(dxfText));
  const app = createApp(memoryHost(), new CoreClient(() => connection), {
    history: newHistory(job),
    fitPending: true,
  });
  keepPlanCurrent(app);
  const settled = async () => {
    for (let turn = 0; turn < 20; turn++) await new Promise((resolve) => setTimeout(resolve, 0));
  };
  await settled();
  return { ...app, settled };
}
