import { newJob, type Job } from '../../../core/job';
import { done, failed } from '../../../core/problem';
import type { Plan } from '../../../core/plan';
import type { HeadlessCore } from '../../../electron/cli/run-headless';
import { emptyDieSet } from '../../support/empty-die-set';

/** A core that always comes to the same plan, for tests of what the command does with it. */
export function fakeCore(more: Partial<HeadlessCore> = {}): HeadlessCore {
  return {
    jobOnDrawing: (fileName, bytes) => newJob(fileName, Buffer.from(bytes).toString('latin1')),
    readJobFile: (text) =>
      text.startsWith('{')
        ? done(JSON.parse(text) as Job)
        : failed('job-unreadable', 'The job is not JSON', 'line 1', 'Give another file.'),
    survey: () =>
      done({
        format: 'dxf',
        units: [
          { unit: 'mm', width: 1.5, height: 0.75, isStated: false, isUsual: true },
          { unit: 'inch', width: 38.1, height: 19.05, isStated: false, isUsual: true },
        ],
        layers: [],
        colours: [],
        gaps: null,
        lines: [],
        drawing: null,
      }),
    followed: (_before, job) => ({ job, lost: [] }),
    sheets: () => done([]),
    verify: (_job, text) => done({ belongs: text === 'ours', blockId: null, say: 'As it says.' }),
    plan: () => done(emptyPlan(true)),
    files: (job) =>
      done([
        { name: `${job.name}.dxf`, text: '0\nEOF\n' },
        { name: `${job.name}.diewright.json`, text: JSON.stringify(job) },
      ]),
    ...more,
  };
}

export function emptyPlan(released: boolean): Plan {
  return {
    drawing: {
      format: 'dxf',
      unit: 'mm',
      contours: [],
      unused: [],
      box: { minX: 0, minY: 0, maxX: 1, maxY: 1 },
      largestFitError: 0,
      leftOut: [],
      repairs: [],
      dimensions: [],
      findings: [],
    },
    reach: { die: 0.15, punch: 0.15, stripper: 0.15, retainer: 0.15 },
    clearance: { perSide: 0.06, reason: 'typed', effect: '' },
    pairs: [],
    dieSet: emptyDieSet,
    blocks: [],
    findings: [],
    proved: true,
    released,
    summary: {
      contours: 0,
      members: 0,
      partSize: { width: 1, height: 1 },
      cutLength: 0,
      largestGouge: 0,
      largestRemainder: 0,
      open: { stop: 0, decide: 0, note: 0 },
    },
  };
}
