import { expose } from 'comlink';
import { createInspector } from '../../core/inspector';
import { createPipeline } from '../../core/pipeline';
import { allFiles } from './all-files';
import type { CoreWorkerApi } from './messages';
import { takesLongToProve } from './takes-long-to-prove';

// The only place where the pipeline runs. It keeps its memo between calls, so an edit recomputes from its stage on.
const pipeline = createPipeline();
const inspector = createInspector(pipeline, createPipeline());

const api: CoreWorkerApi = {
  plan: (job, progress) =>
    pipeline.plan(job, (step, fraction, unproved) => {
      if (unproved && takesLongToProve(unproved)) progress(step, fraction, unproved);
      else progress(step, fraction);
    }),
  files: (job) => allFiles(job, pipeline, inspector),
  clearance: (job, view) => inspector.clearance(job, view),
  evenPosition: (job, view) => inspector.evenPosition(job, view),
  measured: (job) => inspector.measured(job),
  revision: (question) => inspector.revision(question),
  survey: (job, progress) => pipeline.survey(job, progress),
  program: (job, blockId) => pipeline.program(job, blockId),
  verify: (job, text) => pipeline.verify(job, text),
};

expose(api);
