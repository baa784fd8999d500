import type { Inspection } from '../../inspect/inspection';
import { measuringTargets } from '../../inspect/measuring-targets';
import type { Job } from '../../job';
import type { Plan } from '../../plan';
import { done, failed, type Result } from '../../problem';
import type { OutputFile } from '../output-file';
import { fileStem } from '../output-files';
import { writeClearanceCsv, writeMeasuredCsv } from '../write-inspection-csv';
import { writeReadingsCsv } from '../write-readings-csv';
import { findingsSheet } from './findings-sheet';
import { inspectionReport } from './inspection-report';
import { overlayChart } from './overlay-chart';
import { setupSheet } from './setup-sheet';
import type { SheetFonts } from './sheet-fonts';

/** The sheets of a job as PDF with their tables as CSV, and the overlay charts that it asks for. Drafts carry DRAFT in their names too. */
export function sheetFiles(
  job: Job,
  plan: Plan,
  inspection: Inspection,
  fonts: SheetFonts,
): Result<readonly OutputFile[]> {
  const name = fileStem(job.name);
  const mark = plan.released ? '' : '.DRAFT';
  const sheet = (kind: string, text: string): OutputFile => ({
    name: `${name}-${kind}${mark}.pdf`,
    text,
    isBytes: true,
  });
  const charts: OutputFile[] = [];
  for (const { target: id, magnification } of job.sheet.charts) {
    const target = measuringTargets(plan).find((one) => one.id === id);
    if (!target) return noTarget(id);
    const chart = overlayChart(job, plan, target, magnification, fonts);
    if (!chart.ok) return chart;
    charts.push(sheet(`overlay-${fileStem(id)}-${String(magnification).replace('.', '-')}x`, chart.value));
  }
  return done([
    sheet('setup', setupSheet(job, plan, fonts)),
    sheet('findings', findingsSheet(job, plan, fonts)),
    sheet('inspection', inspectionReport(job, plan, inspection, fonts)),
    ...charts,
    { name: `${name}-clearance.csv`, text: writeClearanceCsv(inspection, job) },
    { name: `${name}-measured.csv`, text: writeMeasuredCsv(inspection, job) },
    { name: `${name}-readings.csv`, text: writeReadingsCsv(job) },
  ]);
}

const noTarget = (id: string) =>
  failed(
    'overlay-target',
    'An overlay chart is asked for of something that the job does not have any more',
    id,
    'Take the chart off the list, or choose another contour for it.',
  );
