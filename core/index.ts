export { createPipeline, type Pipeline, type Progress } from './pipeline';
export { jobOnDrawing, readJobFile, writeJobFile } from './job-file';
export { jobFileEnding, jobSchema, newJob, type Job } from './job';
export type { Plan } from './plan';
