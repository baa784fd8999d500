import { expose } from 'comlink';
import { createPipeline } from '../../core/pipeline';
import type { CoreWorkerApi } from './messages';
import { takesLongToProve } from './takes-long-to-prove';

// The only place where the pipeline runs. It keeps its memo between calls, so an edit recomputes from its stage on.
const pipeline = createPipeline();

const api: CoreWorkerApi = {
  plan: (job, progress) =>
    pipeline.plan(job, (step, fraction, unproved) => {
      if (unproved && takesLongToProve(unproved)) progress(step, fraction, unproved);
      else progress(step, fraction);
    }),
  files: (job) => pipeline.files(job),
  survey: (job, progress) => pipeline.survey(job, progress),
  program: (job, blockId) => pipeline.program(job, blockId),
};

expose(api);
