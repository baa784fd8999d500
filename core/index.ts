export { createPipeline, type Pipeline } from './pipeline';
export type { Progress } from './progress';
export { jobOnDrawing, readJobFile, writeJobFile } from './job-file';
export { jobFileEnding, jobSchema, newJob, type Job } from './job';
export type { Plan } from './plan';
