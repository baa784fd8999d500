import { jobFileEnding, type Job } from '../job';
import type { Plan } from '../plan';
import { dieSetFiles } from './die-set-files';
import type { OutputFile } from './output-file';
import { sealProgram } from './program-seal';
import { sealOf } from './seal-of';
import { writeDrillList } from './write-drill-list';
import { writeDxf } from './write-dxf';
import { writeFindingsCsv } from './write-findings-csv';
import { writeOutlineDxf } from './write-outline-dxf';
import { writeProgram } from './write-program';
import { writeSummary } from './write-summary';
import { writeWorkList } from './write-work-list';

/**
 * Everything a plan gives: the paths and the clean outline as DXF, one program a block, drill list and order of work, the findings, the summary
 * and the job itself. While the plan is not released the names of what is made by carry DRAFT.
 */
export function outputFiles(job: Job, plan: Plan, jobFileText: string): readonly OutputFile[] {
  const name = fileStem(job.name);
  const mark = plan.released ? '' : '.DRAFT';
  const seal = plan.released ? sealOf(job, jobFileText) : null;
  const sealed = (text: string) => (seal ? sealProgram(text, seal, job.output.style) : text);
  return [
    { name: `${name}-paths${mark}.dxf`, text: writeDxf(plan, job) },
    { name: `${name}-outline.dxf`, text: writeOutlineDxf(plan) },
    ...plan.blocks.map((block) => ({
      name: `${name}-${fileStem(block.id)}${mark}.nc`,
      text: sealed(writeProgram(block, plan, job)),
    })),
    { name: `${name}-drill-list${mark}.csv`, text: writeDrillList(plan, job) },
    { name: `${name}-work-list${mark}.csv`, text: writeWorkList(plan) },
    ...dieSetFiles(plan, job, name, mark, fileStem),
    { name: `${name}-findings.csv`, text: writeFindingsCsv(plan, job) },
    { name: `${name}-summary.txt`, text: writeSummary(plan, job) },
    { name: `${name}${jobFileEnding}`, text: jobFileText },
  ];
}

/**
 * The name under which an earlier export of the same job may have left the same file with the other mark: a released
 * program beside a newer draft would be cut. Null for files that carry no mark.
 */
export function supersededName(name: string): string | null {
  const marked = /^(.*)\.DRAFT(\.(?:dxf|nc|csv|pdf))$/.exec(name);
  if (marked) return `${marked[1]}${marked[2]}`;
  const plain = /^(.*)(\.(?:dxf|nc|csv|pdf))$/.exec(name);
  return plain ? `${plain[1]}.DRAFT${plain[2]}` : null;
}

/**
 * A name that every file system takes: letters, digits, hyphens. Starts with a letter or digit, so that no part of
 * it means a folder, and is never empty.
 */
export function fileStem(name: string): string {
  const stem = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/ß/g, 'ss')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .slice(0, longestStem)
    .replace(/^-+|-+$/g, '');
  if (stem === '') return 'job';
  return reserved.test(stem) ? `job-${stem}` : stem;
}

/** Leaves room for the endings within the 255 characters of common file systems, and for deep folders. */
const longestStem = 60;

/** Device names that Windows does not allow as file names. */
const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/i;
