import boldFont from '../../core/output/pdf/fonts/sheet-bold.ttf?url';
import regularFont from '../../core/output/pdf/fonts/sheet-regular.ttf?url';
import type { Inspector } from '../../core/inspector';
import type { Job } from '../../core/job';
import type { OutputFile } from '../../core/output/output-file';
import type { SheetFonts } from '../../core/output/pdf/sheet-fonts';
import type { Pipeline } from '../../core/pipeline';
import { done, type Result } from '../../core/problem';

/** Every file of a job. What writes the sheets, and their fonts, are loaded when they are first wanted. */
export async function allFiles(
  job: Job,
  pipeline: Pipeline,
  inspector: Inspector,
): Promise<Result<readonly OutputFile[]>> {
  const [files, plan, inspection] = [pipeline.files(job), pipeline.plan(job), inspector.inspection(job)];
  if (!files.ok) return files;
  if (!plan.ok) return plan;
  if (!inspection.ok) return inspection;
  const { sheetFiles } = await import('../../core/output/pdf/sheet-files');
  const sheets = sheetFiles(job, plan.value, inspection.value, await loadedFonts());
  return sheets.ok ? done([...files.value, ...sheets.value]) : sheets;
}

let fonts: Promise<SheetFonts> | null = null;

function loadedFonts(): Promise<SheetFonts> {
  fonts ??= loadFonts();
  return fonts;
}

async function loadFonts(): Promise<SheetFonts> {
  const { sheetFonts } = await import('../../core/output/pdf/sheet-fonts');
  const [regular, bold] = await Promise.all([regularFont, boldFont].map(bytesAt));
  return sheetFonts(regular ?? new Uint8Array(), bold ?? new Uint8Array());
}

async function bytesAt(address: string): Promise<Uint8Array> {
  // The address may be relative to the page, the worker's own script lies beside the fonts.
  const reply = await fetch(new URL(address, import.meta.url));
  if (!reply.ok) throw new Error(`The font at ${address} could not be loaded`);
  return new Uint8Array(await reply.arrayBuffer());
}
