#!/usr/bin/env node
import boldFont from '../../core/output/pdf/fonts/sheet-bold.ttf';
import regularFont from '../../core/output/pdf/fonts/sheet-regular.ttf';
import { createInspector } from '../../core/inspector';
import { sheetFiles } from '../../core/output/pdf/sheet-files';
import { sheetFonts } from '../../core/output/pdf/sheet-fonts';
import { createPipeline } from '../../core/pipeline';
import { jobOnDrawing, readJobFile } from '../../core/job-file';
import { exitCodes } from './exit-codes';
import { runHeadless } from './run-headless';

const pipeline = createPipeline();
const inspector = createInspector(pipeline, pipeline);

// Whoever reads the summary may stop reading (`| head`): the files are written all the same.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

runHeadless(
  process.argv.slice(2),
  {
    jobOnDrawing,
    readJobFile,
    survey: (job) => pipeline.survey(job),
    followed: (before, job) => pipeline.followed(before, job),
    plan: (job) => pipeline.plan(job),
    files: (job) => pipeline.files(job),
    verify: (job, text) => pipeline.verify(job, text),
    sheets: (job, plan) => {
      const inspection = inspector.inspection(job);
      return inspection.ok
        ? sheetFiles(job, plan, inspection.value, sheetFonts(regularFont, boldFont))
        : inspection;
    },
  },
  {
    out: (text) => void process.stdout.write(`${text}\n`),
    error: (text) => void process.stderr.write(`${text}\n`),
  },
).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    console.error(
      'Diewright made a mistake and wrote nothing. Please report it with the drawing and these lines:',
    );
    console.error(error);
    process.exitCode = exitCodes.bug;
  },
);
