import { expose } from 'comlink';
import { createPipeline } from '../../core/pipeline';
import type { CoreWorkerApi } from './messages';

// The only place where the pipeline runs. It keeps its memo between calls, so an edit recomputes from its stage on.
const pipeline = createPipeline();

const api: CoreWorkerApi = {
  plan: (job, progress) => pipeline.plan(job, progress),
  files: (job) => pipeline.files(job),
  survey: (job, progress) => pipeline.survey(job, progress),
};

expose(api);
