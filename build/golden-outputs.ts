import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInspector } from '../core/inspector';
import type { Job } from '../core/job';
import { jobOnDrawing } from '../core/job-file';
import type { OutputFile } from '../core/output/output-file';
import { sheetFiles } from '../core/output/pdf/sheet-files';
import { sheetFonts } from '../core/output/pdf/sheet-fonts';
import { createPipeline } from '../core/pipeline';
import type { Result } from '../core/problem';
import { shippedStyles } from '../core/shipped-styles';

/** A job of which every output is kept, to the byte. */
export interface GoldenJob {
  readonly name: string;
  readonly job: Job;
}

/** The samples as people might have them made, and one that is released, with its seals. */
export function goldenJobs(projectFolder: string): readonly GoldenJob[] {
  const on = (sample: string): Job => {
    const name = sample.replace(/^.*\//, '');
    return jobOnDrawing(name, new Uint8Array(readFileSync(join(projectFolder, 'samples', sample))));
  };
  const dated = (job: Job): Job => ({ ...job, sheet: { ...job.sheet, revision: 'A', date: '12 March' } });
  const spring = on('rain-gauge-contact-spring.dxf');
  const hinge = on('letterbox-hinge-leaf.dxf');
  const spacer = on('heat-sink-spacer-inch.dxf');
  return [
    {
      name: 'contact spring, brass strip',
      job: { ...spring, stock: { material: 'brass', thickness: 0.2 } },
    },
    {
      name: 'hinge leaf, relief, compensated',
      job: dated({
        ...hinge,
        relief: { ...hinge.relief, kind: 'land and relief' },
        output: { ...hinge.output, program: 'compensated', style: shippedStyles.rs274 ?? hinge.output.style },
      }),
    },
    {
      name: 'spacer, inch, compound tool with strip and sections',
      job: dated({
        ...spacer,
        output: { ...spacer.output, unit: 'inch' },
        sheet: { ...spacer.sheet, page: 'letter' },
        dieSet: {
          ...spacer.dieSet,
          arrangement: 'compound',
          strip: { ...spacer.dieSet.strip, up: 'two up' },
          sections: { of: 'both', stock: 0.1 },
        },
      }),
    },
    { name: 'contact spring, released', job: settled(dated(spring)) },
  ];
}

/** With a reason for every finding that a person may settle. */
function settled(job: Job): Job {
  const { findings } = valueOf(createPipeline().plan(job));
  const open = findings.filter(({ weight }) => weight === 'decide');
  return {
    ...job,
    settled: Object.fromEntries(open.map(({ key }) => [key, { reason: 'agreed with the customer' }])),
  };
}

/** All files of a job, as the command writes them. */
export function outputsOf(job: Job, projectFolder: string): readonly OutputFile[] {
  const pipeline = createPipeline();
  const font = (name: string) =>
    new Uint8Array(readFileSync(join(projectFolder, 'core/output/pdf/fonts', `sheet-${name}.ttf`)));
  const inspection = valueOf(createInspector(pipeline, pipeline).inspection(job));
  const fonts = sheetFonts(font('regular'), font('bold'));
  return [
    ...valueOf(pipeline.files(job)),
    ...valueOf(sheetFiles(job, valueOf(pipeline.plan(job)), inspection, fonts)),
  ];
}

/** One line a file: its fingerprint, the job's name and its own. */
export function goldenLines(projectFolder: string): string {
  const lines = goldenJobs(projectFolder).flatMap(({ name, job }) =>
    outputsOf(job, projectFolder).map((file) => `${fingerprintOf(file)}  ${name}: ${file.name}`),
  );
  return `${lines.join('\n')}\n`;
}

const fingerprintOf = ({ text, isBytes }: OutputFile): string =>
  createHash('sha256')
    .update(Buffer.from(text, isBytes ? 'latin1' : 'utf8'))
    .digest('hex');

function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.problem.what} (${result.problem.where})`);
  return result.value;
}
