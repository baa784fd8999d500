import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readProgram } from '../../core/check/read-program';
import { followTable } from '../../core/follow-table';
import { partTarget } from '../../core/inspect/measuring-targets';
import { readPoints } from '../../core/inspect/read-points';
import { createInspector } from '../../core/inspector';
import type { Job } from '../../core/job';
import { writeJobFile } from '../../core/job-file';
import { readMaterialsFile, writeMaterialsFile } from '../../core/materials-file';
import { openJobFile } from '../../core/open-job-file';
import { createPipeline } from '../../core/pipeline';
import { sayProblem, type Problem } from '../../core/problem';
import { readStyleFile } from '../../core/style-file';
import { readTechnologyFile } from '../../core/technology-file';
import { projectFolder } from '../run-command';
import { drawingSources } from './drawing-sources';
import { fullJobs } from './full-job';
import { mutatedText } from './mutate-text';
import { tryDrawing } from './try-drawing';
import type { WatchedTrial } from './watch-trial';

/** Every kind of file that people hand to the program beside DXF, damaged and then opened and used as the program would. */
export function fileTrials(): readonly WatchedTrial[] {
  const sample = (name: string) => readFileSync(join(projectFolder, 'samples', name), 'utf8');
  const jobs = fullJobs();
  const [plain] = jobs;
  if (!plain) throw new Error('no job to begin with');
  const pipeline = createPipeline();
  const program = pipeline.files(plain);
  if (!program.ok) throw new Error(program.problem.what);
  const programs = program.value.filter(({ name }) => name.endsWith('.nc')).map(({ text }) => String(text));
  return [
    trial('job', jobs.map(writeJobFile), (text, seed) => {
      const opened = openJobFile(text);
      if (!opened.ok) return clear(opened.problem);
      // Working it out takes a hundred times as long as opening it.
      if (seed % 8 !== 0) return 'opened';
      return used(opened.value.job);
    }),
    trial('technology', [sample('starting-values.diewright-technology.json')], (text) => {
      const read = readTechnologyFile(text);
      return read.ok ? used(followTable({ ...plain, technology: read.value })) : clear(read.problem);
    }),
    trial('style', [sample('workshop-example.diewright-style.json')], (text) => {
      const read = readStyleFile(text);
      if (!read.ok) return clear(read.problem);
      return used({ ...plain, output: { ...plain.output, style: read.value } });
    }),
    trial('materials', [materials], (text) => {
      const read = readMaterialsFile(text);
      if (!read.ok) return clear(read.problem);
      const [own] = read.value;
      const stock = { material: own?.id ?? plain.stock.material, thickness: 1 };
      return used({ ...plain, ownMaterials: [...read.value], stock });
    }),
    trial('points', [sample('rain-gauge-contact-spring-measured.csv'), semicolons, columns], (text) => {
      const read = readPoints(text);
      if (!read.ok) return clear(read.problem);
      const points = read.value.points.slice(0, 60).map(({ x, y, id }) => ({ x, y, id }));
      return measured(plain, points);
    }),
    trial('svg', svgSources(), (text, seed) => tryDrawing(new TextEncoder().encode(text), seed)),
    trial('program', programs, (text) => {
      const read = readProgram(text);
      const verdict = pipeline.verify(plain, text);
      if (!verdict.ok) return clear(verdict.problem);
      return read.ok ? 'read' : clear(read.problem);
    }),
  ];
}

function trial(
  name: string,
  sources: readonly string[],
  attempt: (text: string, seed: number) => string,
): WatchedTrial {
  return {
    name,
    bytes: (seed) => mutatedText(sources, seed),
    attempt: (bytes, seed) => attempt(new TextDecoder('utf-8').decode(bytes), seed),
  };
}

/** The whole of a job worked out and written, as the program would. */
function used(job: Job): string {
  const pipeline = createPipeline();
  const planned = pipeline.plan(job);
  if (!planned.ok) return clear(planned.problem);
  for (const { message, title } of planned.value.findings) {
    if (message === '' || title === '' || /undefined|NaN|\[object/.test(message))
      throw new Error(`A finding that says nothing: ${message}`);
  }
  const files = pipeline.files(job);
  if (!files.ok) return clear(files.problem);
  for (const { name, text } of files.value)
    if (typeof text === 'string' && /\bNaN\b|\bundefined\b/.test(text) && !name.endsWith('.json'))
      throw new Error(`${name} holds what is no number`);
  return planned.value.released ? 'released' : 'draft';
}

function measured(job: Job, points: readonly { x: number; y: number; id: string }[]): string {
  const set = {
    name: 'set',
    fileName: 'points.csv',
    target: partTarget,
    points: [...points],
    fit: {
      method: 'minimum zone' as const,
      freedom: { shiftX: true, shiftY: true, turn: true },
      outliers: 'leave out' as const,
    },
  };
  const pipeline = createPipeline();
  const found = createInspector(pipeline, pipeline).measured({
    ...job,
    inspection: { ...job.inspection, measured: [set] },
  });
  if (!found.ok) return clear(found.problem);
  const [own] = found.value.measured;
  return own && !own.ok ? clear(own.problem) : 'compared';
}

function clear(problem: Problem): string {
  const text = sayProblem(problem);
  if (problem.what === '' || problem.whatToDo === '' || /undefined|\[object/.test(text))
    throw new Error(`A problem that does not say what a person needs: ${text}`);
  return problem.code;
}

const materials = writeMaterialsFile([
  {
    id: 'own-1',
    name: 'Spring bronze',
    family: null,
    clearance: 0.06,
    shearStrength: 400,
    tensileStrength: null,
    source: 'mill sheet',
  },
  {
    id: 'own-2',
    name: 'Soft brass strip',
    family: null,
    clearance: 0.05,
    shearStrength: null,
    tensileStrength: 330,
    source: '',
  },
]);
const semicolons =
  'Nr;X [mm];Y [mm];Element\n1;0,000;1,002;rand\n2;9,998;0,003;rand\n3;20,001;6,2;rand\n4;3,1;12;rand\n';
const columns = '# machine list, inch\n0.0 0.04\n0.39 0.0\n0.79 0.2\n0.55 0.47\n';

const svgSources = (): readonly string[] =>
  drawingSources(projectFolder)
    .map((bytes) => new TextDecoder('utf-8').decode(bytes))
    .filter((text) => text.includes('<svg'))
    .concat(readFileSync(join(projectFolder, 'samples/as-sent/spice-tin-spring.svg'), 'utf8'));
