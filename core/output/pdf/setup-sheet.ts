import { materialName, passesOf, type Job } from '../../job';
import type { Block, Plan } from '../../plan';
import { sayLength } from '../../say';
import { formatLength, formatLengthNumber, type DisplayUnit } from '../../units';
import { blockWork, type WorkStep } from '../../wire/block-work';
import { cautions } from '../cautions';
import { passName } from '../format-program';
import { offsetWord } from '../offset-word';
import { writableKind } from '../program-steps';
import { timeRows } from '../time-rows';
import { drawBlock } from './block-drawing';
import { finishedPaper, newPaper } from './paper';
import type { SheetFonts } from './sheet-fonts';
import { SheetFlow } from './sheet-flow';
import { sheetHead } from './sheet-head';
import { startHoles } from './start-holes';

/**
 * What the person at the machine needs: for every block a picture, its size, the start holes, the order of work with
 * its stops, the passes with their offset registers, the time, and the cautions. A PDF, one character a byte.
 */
export function setupSheet(job: Job, plan: Plan, fonts: SheetFonts): string {
  const paper = newPaper(job.sheet.page, 'portrait', fonts, sheetHead(job, plan, 'Setup sheet'));
  const flow = new SheetFlow(paper);
  flow.facts(jobFacts(job, plan));
  for (const block of plan.blocks) addBlock(flow, block, job, plan);
  flow.heading('Time');
  flow.table(
    [{ name: 'Member' }, { name: 'Machine time, wire, price' }],
    timeRows(plan, job).map(({ label, text }) => [label, text]),
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
    ['Smallest inside radius', `die ${sayLength(plan.reach.die)}, punch ${sayLength(plan.reach.punch)}`],
  ];
}

/** The heading, the picture and the first facts stay together, mm. */
const blockRoom = 125;

function addBlock(flow: SheetFlow, block: Block, job: Job, plan: Plan): void {
  const { unit } = job.output;
  const work = blockWork(plan, block);
  const holes = startHoles(work);
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
  ]);
  flow.table(
    [
      { name: 'Start hole' },
      { name: `x, ${unit}`, isNumber: true },
      { name: `y, ${unit}`, isNumber: true },
      { name: `⌀, ${unit}`, isNumber: true },
      { name: 'Kind' },
      { name: 'Member' },
    ],
    holes.map(({ name, hole, memberId }) => [
      name,
      ...coordinates([hole.x, hole.y], unit),
      hole.kind === 'edge' ? '–' : formatLengthNumber(hole.diameter, unit),
      { drilled: 'to be made', drawn: 'in the drawing', edge: 'from the edge' }[hole.kind],
      memberId,
    ]),
  );
  flow.table(
    [
      { name: 'Order' },
      { name: 'Member' },
      { name: 'Start hole' },
      { name: 'Cuts' },
      { name: 'Stops and what to do' },
    ],
    work.map((step, k) => [
      String(k + 1),
      step.member.id,
      holes.find(({ hole }) => hole === step.start)?.name ?? 'none fits',
      cutsOf(step),
      stopsOf(step),
    ]),
  );
  addPasses(flow, block, work, job);
}

function addPasses(flow: SheetFlow, block: Block, work: readonly WorkStep[], job: Job): void {
  const { unit, style, program } = job.output;
  const isCompensated = writableKind(work, program) === 'compensated';
  const last = passesOf(job, block.role).length - 1;
  const number = (mm: number) => formatLengthNumber(mm, unit);
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
    passesOf(job, block.role).map(({ sparkGap, stockLeft, feed, rate, roughness }, k) => [
      passName(k),
      number(sparkGap),
      k === last ? '0' : number(stockLeft),
      number(job.wire.diameter / 2 + sparkGap + stockLeft),
      isCompensated ? offsetWord(style.offsets, k + 1) : 'none: wire centre',
      number(feed ?? rate / job.blocks[block.role]),
      roughness === null ? '–' : String(roughness),
    ]),
  );
}

function blockSize({ outline, role }: Block, job: Job): string {
  const { unit } = job.output;
  const across = formatLength(outline.maxX - outline.minX, unit);
  const up = formatLength(outline.maxY - outline.minY, unit);
  return `${across} × ${up}, ${formatLength(job.blocks[role], unit)} high`;
}

const programWords = (work: readonly WorkStep[], { output }: Job): string =>
  writableKind(work, output.program) === 'compensated'
    ? 'contour with G41/G42: set the registers below before running'
    : 'path of the wire centre: no offset in the control';

function cutsOf({ runs }: WorkStep): string {
  const words = runs.map(({ pass, part }) => `${passName(pass.pass)}${part === 'tabs' ? ', tab' : ''}`);
  return words.filter((word, k) => word !== words[k - 1]).join('; ');
}

function stopsOf({ runs, threading }: WorkStep): string {
  const stops = runs.flatMap(({ stop, pass }) =>
    stop === null ? [] : [`before ${passName(pass.pass)}: ${stop}`],
  );
  const attended = threading.attended ? ['stay beside it: a piece comes loose'] : [];
  return [...attended, ...stops, ...(threading.after === null ? [] : [`then ${threading.after}`])].join('; ');
}

const coordinates = (values: readonly number[], unit: DisplayUnit): readonly string[] =>
  values.map((value) => formatLengthNumber(value, unit));
