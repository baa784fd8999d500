import { materialName, heightOf, passesOf, type Job } from '../../job';
import { writeJobFile } from '../../job-file';
import type { Block, Plan } from '../../plan';
import { sayLength } from '../../say';
import { formatLength, type DisplayUnit } from '../../units';
import { blockWork, type WorkStep } from '../../wire/block-work';
import { cautions } from '../cautions';
import { feedSteps } from '../feed-steps';
import { namedHoles } from '../named-holes';
import { offsetWord } from '../offset-word';
import { passName } from '../pass-name';
import { sealOf } from '../seal-of';
import { offsetNumber, writableKind } from '../program-steps';
import { reliefRows } from '../relief-rows';
import { timeRows } from '../time-rows';
import { workRows } from '../work-rows';
import { drawBlock } from './block-drawing';
import { columnNumber } from './column-number';
import { finishedPaper, newPaper } from './paper';
import type { SheetFonts } from './sheet-fonts';
import { SheetFlow } from './sheet-flow';
import { sheetHead } from './sheet-head';

/**
 * What the person at the machine needs: for every block a picture, its size, the start holes, the order of work with
 * its stops, the passes with their offset registers, the time, and the cautions. A PDF, one character a byte.
 */
export function setupSheet(job: Job, plan: Plan, fonts: SheetFonts): string {
  const paper = newPaper(job.sheet.page, 'portrait', fonts, sheetHead(job, plan, 'Setup sheet'));
  const flow = new SheetFlow(paper);
  flow.facts(jobFacts(job, plan));
  for (const block of plan.blocks) addBlock(flow, block, job, plan);
  const times = timeRows(plan, job);
  flow.needs(timeRoom + rowHeight * times.length);
  flow.heading('Time');
  flow.table(
    [{ name: 'Member' }, { name: 'Machine time, wire, price' }],
    times.map(({ label, text }) => [label, text]),
  );
  flow.text('Setting up, measuring and standing still at a stop are not counted.');
  flow.heading('Cautions');
  for (const caution of cautions) flow.text(caution);
  return finishedPaper(paper);
}

function jobFacts(job: Job, plan: Plan): readonly (readonly [string, string])[] {
  const { width, height } = plan.summary.partSize;
  return [
    ['Part', `${sayLength(width)} × ${sayLength(height)}`],
    ['Stock', `${sayLength(job.stock.thickness)} ${materialName(job)}`],
    ['Clearance', `${sayLength(plan.clearance.perSide)} per side: ${plan.clearance.reason}`],
    ['Wire', `⌀ ${sayLength(job.wire.diameter)}`],
    ['Coordinates', `the drawing's, in ${job.output.unit === 'inch' ? 'inch' : 'mm'}`],
    ...reliefRows(plan).map(({ label, text }) => [label, text] as const),
    ['Smallest inside radius', `die ${sayLength(plan.reach.die)}, punch ${sayLength(plan.reach.punch)}`],
    ...(plan.released ? sealFacts(job) : []),
  ];
}

/** As the programs carry it: whoever holds both can compare. */
function sealFacts(job: Job): readonly (readonly [string, string])[] {
  const { job: ofJob, drawing } = sealOf(job, writeJobFile(job));
  return [
    ['Seal, job', ofJob],
    ['Seal, drawing', drawing],
  ];
}

/** A heading with the head of a table, and one row of it, mm: times that fit on a page are not torn apart. */
const timeRoom = 18;
const rowHeight = 4.7;

/** The heading, the picture and the first facts stay together, mm. */
const blockRoom = 125;

function addBlock(flow: SheetFlow, block: Block, job: Job, plan: Plan): void {
  const { unit } = job.output;
  const work = blockWork(plan, block);
  const holes = namedHoles(plan).filter(({ blockId }) => blockId === block.id);
  flow.needs(blockRoom);
  flow.heading(`Block ${block.id}`);
  const { outline } = block;
  const length = (mm: number) => formatLength(mm, unit);
  flow.picture({
    box: outline,
    height: 82,
    say: 'Die solid, punch dashed, wire path thin; start holes numbered; clamping strips hatched.',
    draw: (view) => drawBlock(view, block, work, holes),
  });
  flow.facts([
    ['Block', blockSize(block, job)],
    ['Lower left corner', `x ${length(outline.minX)}, y ${length(outline.minY)}`],
    ['Members', block.memberIds.join(', ')],
    ['Program', programWords(work, job)],
    ...(work.some(({ member }) => member.relief)
      ? ([['Clamping', 'with the cutting edge down: heights are measured from it']] as const)
      : []),
  ]);
  flow.table(
    [
      { name: 'Start hole' },
      { name: `x, ${unit}`, isNumber: true },
      { name: `y, ${unit}`, isNumber: true },
      { name: `⌀, ${unit}`, isNumber: true },
      { name: 'Made by' },
      { name: 'Cut' },
    ],
    holes.map(({ name, hole, cutId }) => [
      name,
      ...coordinates([hole.x, hole.y, hole.diameter], unit),
      hole.kind === 'drawn' ? 'in the drawing' : 'to be drilled or eroded through',
      cutId,
    ]),
  );
  flow.table(
    [{ name: 'Step' }, { name: 'What' }, { name: 'Cut' }, { name: 'Detail' }, { name: 'Someone there' }],
    workRows(plan, block).map(({ kind, cutId, say, attended }, k) => [
      String(k + 1),
      kind,
      cutId,
      say,
      attended ? 'YES' : '',
    ]),
  );
  addPasses(flow, block, work, job);
}

/** Each pass as it is planned, the relief among them, with what the control's offset table needs. */
function addPasses(flow: SheetFlow, block: Block, work: readonly WorkStep[], job: Job): void {
  const { unit, style, program } = job.output;
  const isCompensated = writableKind(work, program) === 'compensated';
  const stated = passesOf(job, block.part);
  const all = work.flatMap(({ cut }) => cut.passes);
  const planned = [...new Map(all.map((pass) => [pass.pass, pass])).values()].sort((a, b) => a.pass - b.pass);
  const number = (mm: number) => columnNumber(mm, unit);
  flow.table(
    [
      { name: 'Pass' },
      { name: `Spark gap, ${unit}`, isNumber: true },
      { name: `Stock left, ${unit}`, isNumber: true },
      { name: `Offset, ${unit}`, isNumber: true },
      { name: 'Register' },
      { name: `Feed, ${unit}/min`, isNumber: true },
      { name: 'Ra expected, µm', isNumber: true },
    ],
    planned.map((pass) => {
      const by = pass.lean === 'relief' ? undefined : stated[pass.pass];
      return [
        passName(pass),
        by ? number(by.sparkGap) : '–',
        by ? number(pass.pass + 1 === stated.length ? 0 : by.stockLeft) : '–',
        number(pass.offset),
        isCompensated ? offsetWord(style.offsets, offsetNumber(pass)) : 'none: wire centre',
        feedNumber(pass.feed, job),
        typeof by?.roughness === 'number' ? String(by.roughness) : '–',
      ];
    }),
  );
}

/** With the decimals that the programs give it, so that sheet and program say the same. */
function feedNumber(feed: number, { output: { unit, style } }: Job): string {
  const { mmDecimals, inchDecimals } = style.feed ?? { mmDecimals: 2, inchDecimals: 4 };
  const decimals = unit === 'inch' ? inchDecimals : mmDecimals;
  return (feedSteps(feed, unit, decimals) / 10 ** decimals).toFixed(decimals);
}

function blockSize({ outline, part }: Block, job: Job): string {
  const { unit } = job.output;
  const across = formatLength(outline.maxX - outline.minX, unit);
  const up = formatLength(outline.maxY - outline.minY, unit);
  return `${across} × ${up}, ${formatLength(heightOf(job, part), unit)} high`;
}

const programWords = (work: readonly WorkStep[], { output }: Job): string =>
  writableKind(work, output.program) === 'compensated'
    ? 'contour with G41/G42: set the registers below before running'
    : 'path of the wire centre: no offset in the control';

const coordinates = (values: readonly number[], unit: DisplayUnit): readonly string[] =>
  values.map((value) => columnNumber(value, unit));
