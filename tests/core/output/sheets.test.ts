import { describe, expect, test } from 'vitest';
import { createPipeline } from '../../../core/pipeline';
import { inspectionOf } from '../../../core/inspect/inspection';
import type { MeasuredSet } from '../../../core/inspection-settings';
import { passesOf, type Job } from '../../../core/job';
import { cautions } from '../../../core/output/cautions';
import { namedHoles } from '../../../core/output/named-holes';
import type { OutputFile } from '../../../core/output/output-file';
import { openSeal } from '../../../core/output/program-seal';
import { sheetFiles } from '../../../core/output/pdf/sheet-files';
import { writeProgram } from '../../../core/output/write-program';
import type { Plan } from '../../../core/plan';
import { jobOn } from '../../support/dxf-of';
import { pdfFonts, readPdfPages } from '../../support/pdf-pages';
import { circle, roundedRectangle, square } from '../../support/shapes';
import { testFonts } from '../../support/test-fonts';

// Sources: page sizes ISO 216 and ANSI/ASME Y14.1; the rest is what the job and its plan say, read back from the PDF's
// own operators.

const fonts = testFonts();
const sheet: Job['sheet'] = { revision: 'B', date: '25 Nov 2026', page: 'A4', charts: [] };

function made(job: Job): { readonly plan: Plan; readonly files: readonly OutputFile[] } {
  const plan = createPipeline().plan(job);
  if (!plan.ok) throw new Error(plan.problem.what);
  const files = sheetFiles(job, plan.value, inspectionOf(plan.value, job.inspection), fonts);
  if (!files.ok) throw new Error(files.problem.what);
  return { plan: plan.value, files: files.value };
}

const named = (files: readonly OutputFile[], part: string): string =>
  files.find(({ name }) => name.includes(part))?.text ?? '';

const textOf = (pdf: string): string =>
  readPdfPages(pdf)
    .map(({ text }) => text)
    .join(' ');

/** Points of a set on the edges of a square of 20, each so far out of the material. */
const onSquare = (name: string, target: string, size: number, out: readonly number[]): MeasuredSet => ({
  name,
  fileName: 'list.csv',
  target,
  points: out.map((off, k) => {
    const [low, high] = [10 - size / 2 - off, 10 + size / 2 + off];
    const along = 4 + (k % 3) * 4;
    const at = [
      { x: high, y: along },
      { x: along, y: high },
      { x: low, y: along },
      { x: along, y: low },
    ][k % 4] ?? { x: 0, y: 0 };
    return { ...at, id: `${name.charAt(0).toUpperCase()}${k + 1}` };
  }),
  fit: {
    method: 'as measured',
    freedom: { shiftX: true, shiftY: true, turn: true },
    outliers: 'keep',
  },
});

/** A square with a hole: its sharp corners are findings. */
const drafted = jobOn([square(20), circle(2, 10, 10)], {
  sheet: { ...sheet, charts: [{ target: 'part', magnification: 20 }] },
  inspection: {
    clearanceTolerance: null,
    profile: { width: 0.02, outside: 0.015 },
    measured: [
      onSquare('punch', 'blank-c1-punch', 19.88, [0.001, 0, -0.001, 0.003, 0, 0.001, 0, 0.012]),
      onSquare('die', 'blank-c1-die', 20, [0, 0.001, 0, -0.001, 0, 0, 0.001, 0]),
    ],
    readings: [
      { kind: 'distance', from: { x: 0, y: 0 }, to: { x: 20, y: 0 } },
      { kind: 'angle', at: { x: 0, y: 0 }, first: { x: 1, y: 0 }, second: { x: 1, y: 1 } },
    ],
  },
});

describe.each(['A4', 'letter'] as const)('on %s', (page) => {
  const { files } = made({ ...drafted, sheet: { ...drafted.sheet, page } });
  const sheets = files.filter(({ name }) => name.endsWith('.pdf'));

  test('four kinds of sheets, their names marked as drafts, CSV beside them', () => {
    expect(files.map(({ name }) => name)).toEqual([
      'test-setup.DRAFT.pdf',
      'test-findings.DRAFT.pdf',
      'test-inspection.DRAFT.pdf',
      'test-overlay-part-20x.DRAFT.pdf',
      'test-clearance.csv',
      'test-measured.csv',
      'test-readings.csv',
    ]);
  });

  test.each(sheets.map(({ name, text }) => [name, text] as const))(
    '%s: every page has its size and states job, revision, date, units and DRAFT',
    (_name, text) => {
      const pages = readPdfPages(text);
      const [narrow, long] = page === 'A4' ? [210, 297] : [215.9, 279.4];
      pages.forEach(({ width, height, text: words }, k) => {
        expect(Math.min(width, height)).toBeCloseTo(narrow, 4);
        expect(Math.max(width, height)).toBeCloseTo(long, 4);
        expect(words).toContain('Job test · drawing test.dxf');
        expect(words).toContain('Revision B · date 25 Nov 2026 · lengths in mm');
        expect(words).toContain('DRAFT – findings open – do not cut');
        expect(words).toContain(`Page ${k + 1} of ${pages.length}`);
      });
      const { used, embedded } = pdfFonts(text);
      expect(embedded).toBe(used);
      expect(used).toBeGreaterThan(0);
    },
  );
});

test('a released job says RELEASED and carries no mark; what nobody stated is said to be missing', () => {
  const job = jobOn([roundedRectangle(20, 10, 0.5)], { sheet: { ...sheet, revision: '', date: ' ' } });
  const { plan, files } = made(job);
  expect(plan.released).toBe(true);
  expect(files.map(({ name }) => name)).toContain('test-setup.pdf');
  for (const { text } of files.filter(({ name }) => name.endsWith('.pdf'))) {
    for (const { text: words } of readPdfPages(text)) {
      expect(words).toContain('RELEASED');
      expect(words).not.toContain('DRAFT');
      expect(words).toContain('Revision not stated · date not stated');
    }
  }
});

test('setup sheet: start holes as the drill list names them, registers with their offsets, times, cautions', () => {
  const job = { ...drafted, output: { ...drafted.output, program: 'compensated' as const } };
  const { plan, files } = made(job);
  const words = textOf(named(files, 'setup'));
  for (const { name, hole, cutId } of namedHoles(plan)) {
    expect(words).toContain(`${name} ${hole.x.toFixed(4)} ${hole.y.toFixed(4)} ${hole.diameter.toFixed(4)}`);
    expect(words).toContain(cutId);
  }
  // Half the wire, the gap, and what is still to be left (derived from the geometry of a cut).
  passesOf(job, 'die').forEach(({ sparkGap, stockLeft }, k, all) => {
    const left = k + 1 === all.length ? 0 : stockLeft;
    expect(words).toContain(`${(job.wire.diameter / 2 + sparkGap + left).toFixed(4)} D${k + 1}`);
  });
  // The feeds as the programs have them: F3.33 is 3.33 on the sheet.
  const programs = plan.blocks.map((block) => writeProgram(block, plan, job)).join('');
  expect(programs).toContain('F');
  for (const [, feed] of programs.matchAll(/F(\d+\.\d+)/g)) expect(words).toContain(` ${feed} `);
  for (const block of plan.blocks) expect(words).toContain(`Block ${block.id}`);
  for (const caution of cautions) expect(words.replace(/\s+/g, ' ')).toContain(caution);
  expect(words).toMatch(/Time .* h \d+ min/);
});

test('findings sheet: what was accepted with its reason, what is open, what has to change', () => {
  const { plan } = made(drafted);
  const [first, second] = plan.findings.filter(({ weight }) => weight === 'decide');
  if (!first || !second) throw new Error('The square has corners to decide about');
  const settled = { [first.key]: { reason: 'agreed by the customer' } };
  const words = textOf(named(made({ ...drafted, settled }).files, 'findings'));
  expect(words).toContain('accepted: agreed by the customer');
  expect(words).toContain('OPEN');
  for (const { title } of plan.findings) expect(words).toContain(title);
  const before = textOf(named(made(drafted).files, 'findings'));
  expect(before).not.toContain('accepted:');
});

test('inspection report: clearance, verdicts, worst place, unequal zone in both standards, readings', () => {
  const words = textOf(named(made(drafted).files, 'inspection'));
  // Soft cold-rolled steel 1 mm: 0.06 per side (Groover, table 20.1).
  expect(words).toContain('Wanted 0.06 mm ± 0.006 mm per side');
  // 0.02 wide, 0.015 outside: −0.005 to 0.015, centred on 0.005; 2 · 0.007 is needed for 0.012.
  expect(words).toContain('PASSES: profile 0.014 mm of 0.02 mm allowed');
  expect(words).toContain('0.02 mm (U) 0.015 mm (ASME Y14.5), 0.02 mm UZ +0.005 mm (ISO 1101)');
  expect(words).toContain('Worst place: point P8');
  expect(words).toContain('Measured clearance of contour c1: punch in die');
  expect(words).toMatch(/1 distance 20 mm/);
  expect(words).toMatch(/2 angle 45\.0000°/);
});

test('a plate of many holes: every pair in one table, pictures only of what is outside the tolerance', () => {
  const holes = Array.from({ length: 9 }, (_, k) => circle(1.5, 6 + 8 * (k % 3), 6 + 8 * Math.floor(k / 3)));
  const words = textOf(named(made(jobOn([square(28), ...holes], { sheet })).files, 'inspection'));
  for (let k = 1; k <= 10; k++) expect(words).toContain(`c${k} 0.0600 `);
  expect(words).toContain('1 of them, worst first');
  expect(words).toContain('Clearance of contour c1 as cut');
  expect(words).not.toContain('Clearance of contour c2 as cut');
});

test('CSV: a row for each point with its verdict and clearance, in the unit of the job', () => {
  const rows = (unit: 'mm' | 'inch') =>
    named(made({ ...drafted, output: { ...drafted.output, unit } }).files, 'measured.csv')
      .trim()
      .split('\r\n')
      .map((row) => row.split(','));
  const [head, ...points] = rows('mm');
  expect(head?.slice(0, 6)).toEqual(['set', 'measured on', 'point', 'x (mm)', 'y (mm)', 'deviation (mm)']);
  expect(points).toHaveLength(16);
  const p8 = points.find(([, , id]) => id === 'P8');
  expect(p8?.slice(3, 7)).toEqual(['8.00000', '0.04800', '0.01200', 'passes']);
  // 0.06 less what the punch stands out there; the die is as designed opposite.
  expect(Number(p8?.[8])).toBeCloseTo(0.048, 3);
  const inch = rows('inch').find(([, , id]) => id === 'P8');
  expect(Number(inch?.[5])).toBeCloseTo(0.012 / 25.4, 6);
});

test('CSV: the pinned readings with their points', () => {
  const rows = named(made(drafted).files, 'readings.csv')
    .trim()
    .split('\r\n')
    .map((row) => row.split(','));
  expect(rows.map((row) => row.length)).toEqual([13, 13, 13]);
  expect(rows[1]?.slice(0, 10)).toEqual([
    '1',
    'distance',
    '20.00000',
    'mm',
    'from',
    '0.00000',
    '0.00000',
    'to',
    '20.00000',
    '0.00000',
  ]);
  expect(rows[2]?.slice(1, 5)).toEqual(['angle', '45.00000', 'degrees', 'at']);
});

test('in inches every page says so, and lengths are in inches', () => {
  const { files } = made({ ...drafted, output: { ...drafted.output, unit: 'inch' } });
  for (const { name, text } of files.filter((file) => file.name.endsWith('.pdf'))) {
    for (const page of readPdfPages(text)) expect(page.text, name).toContain('lengths in inch');
  }
  expect(textOf(named(files, 'inspection'))).toContain('Wanted 0.00236 in ± 0.00024 in per side');
});

test('a chart of something that is gone is a problem that names it', () => {
  const job = { ...drafted, sheet: { ...sheet, charts: [{ target: 'blank-c9-die', magnification: 10 }] } };
  const plan = createPipeline().plan(job);
  if (!plan.ok) throw new Error(plan.problem.what);
  const files = sheetFiles(job, plan.value, inspectionOf(plan.value, job.inspection), fonts);
  expect(files.ok ? null : files.problem).toMatchObject({ code: 'overlay-target', where: 'blank-c9-die' });
});

test('the same job has the same bytes', () => {
  const once = () => made(drafted).files.map(({ text }) => text);
  expect(once()).toEqual(once());
});

test('a released setup sheet carries the seal of its programs, a draft none', () => {
  const job = jobOn([roundedRectangle(20, 10, 1)], { sheet });
  const { plan, files } = made(job);
  expect(plan.released).toBe(true);
  const outputs = createPipeline().files(job);
  if (!outputs.ok) throw new Error(outputs.problem.what);
  const programs = outputs.value.filter(({ name }) => name.endsWith('.nc'));
  expect(programs.length).toBeGreaterThan(1);
  const words = textOf(named(files, 'setup'));
  for (const { text } of programs) {
    const seal = openSeal(text);
    expect(words).toContain(seal?.job);
    expect(words).toContain(seal?.drawing);
  }
  expect(textOf(named(made(drafted).files, 'setup'))).not.toContain('Seal');
});
