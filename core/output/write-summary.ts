import type { Finding } from '../finding';
import { tolerance } from '../geometry/tolerance';
import { materialName, passesOf, type Job } from '../job';
import { neutralStyle } from '../neutral-style';
import type { Block, Pair, PlateOpening, Plan } from '../plan';
import { sayGap, sayLength } from '../say';
import { formatLengthNumber } from '../units';
import { blockWork } from '../wire/block-work';
import { membersOfPair } from '../wire/members-of';
import { cautions, draftMark } from './cautions';
import { dieSetLines } from './die-set-lines';
import { namedHoles } from './named-holes';
import { writableKind } from './program-steps';
import { reliefRows } from './relief-rows';
import { timeRows } from './time-rows';
import { workRows } from './work-rows';

/** The whole result on one page of plain text, lengths in mm and inch. Ends with a line break. */
export function writeSummary(plan: Plan, job: Job): string {
  const { summary } = plan;
  const { open } = summary;
  const times = timeRows(plan, job);
  return [
    `Diewright: ${job.name}`,
    plan.released ? 'RELEASED - all findings settled, all proofs passed' : draftMark,
    '',
    row(
      'Drawing',
      `${job.drawing.fileName}, ${sayLength(summary.partSize.width)} × ${sayLength(summary.partSize.height)}`,
    ),
    row('Stock', `${sayLength(job.stock.thickness)} ${materialName(job)}`),
    row('Clearance', `${sayLength(plan.clearance.perSide)} per side: ${plan.clearance.reason}`),
    row('Edge', plan.clearance.effect),
    ...sizeShifts(plan, job),
    row('Wire', `${sayLength(job.wire.diameter)}, smallest inside radius ${reach(plan)}`),
    row('Passes', passes(job)),
    ...reliefRows(plan).map(({ label, text }) => row(label, text)),
    row('Programs', programs(plan, job)),
    row('Contours', `${summary.contours}, members ${summary.members}`),
    row('Cut length', `${sayLength(summary.cutLength)} over all passes`),
    row('Time', `${times.at(-1)?.text ?? ''}; setting up and standing still not counted`),
    row(
      'Proof',
      `largest gouge ${sayLength(summary.largestGouge)}, largest remainder ${sayLength(summary.largestRemainder)}, ` +
        `both to ${sayLength(tolerance.proofChord)}`,
    ),
    row('Findings', `${open.stop} stop, ${open.decide} decide open; ${open.note} note`),
    '',
    'Members',
    ...plan.pairs.flatMap(pairLines),
    '',
    'Die set',
    ...dieSetLines(plan, job),
    '',
    'Cutting',
    ...times.map(({ label, text }) => `  ${label}: ${text}`),
    '',
    'Start holes',
    ...holeLines(plan),
    '',
    'Order of work',
    ...plan.blocks.flatMap((block) => blockLines(plan, block)),
    '',
    'Findings',
    ...(plan.findings.length === 0 ? ['  none'] : plan.findings.map((finding) => findingLine(finding, job))),
    '',
    'Cautions',
    ...cautions.map((caution) => `  ${caution}`),
    '',
  ].join('\n');
}

/** Which contours are made larger or smaller than drawn; no row where none is. */
function sizeShifts({ drawing }: Plan, job: Job): string[] {
  const shifted = drawing.contours.flatMap(({ id }) => {
    const shift = job.sizeShifts[id] ?? 0;
    return shift === 0 ? [] : [`${id} ${shift > 0 ? '+' : ''}${sayLength(shift)}`];
  });
  return shifted.length === 0 ? [] : [row('Size shift', `${shifted.join(', ')}; per side`)];
}

function pairLines(pair: Pair): string[] {
  const fit = pair.fit ? `, as-cut clearance ${sayGap(pair.fit.least)} to ${sayGap(pair.fit.greatest)}` : '';
  return membersOfPair(pair).map((member) => {
    const { proof } = member;
    const plate = pair.plates.find((one) => one.member === member);
    const own = plate ? plateFit(plate) : fit;
    const verdict = proof.passed ? 'proof passed' : 'PROOF FAILED';
    return `  ${member.id}: ${verdict}, gouge ${sayLength(proof.gouge)}, remainder ${sayLength(proof.remainder)}${own}`;
  });
}

const plateFit = ({ gap, reason, fit }: PlateOpening): string =>
  `, gap to the punch ${sayGap(gap)} per side (${reason})` +
  (fit ? `, as cut ${sayGap(fit.least)} to ${sayGap(fit.greatest)}` : '');

function holeLines(plan: Plan): string[] {
  const holes = namedHoles(plan).map(({ name, cutId, hole: { x, y, diameter, kind } }) => {
    const origin = kind === 'drawn' ? ', in the drawing' : '';
    return `  ${name} ${cutId}: x ${sayLength(x)} y ${sayLength(y)}, diameter ${sayLength(diameter)}${origin}`;
  });
  return holes.length > 0 ? holes : ['  none'];
}

function blockLines(plan: Plan, block: Block): string[] {
  const { id, outline, travel } = block;
  const size = `${sayLength(outline.maxX - outline.minX)} × ${sayLength(outline.maxY - outline.minY)}`;
  return [
    `  Block ${id}, at least ${size}; ${sayLength(travel)} from hole to hole`,
    ...workRows(plan, block).map(
      ({ kind, cutId, say, attended }, k) =>
        `    ${k + 1} ${kind} ${cutId}${say === '' ? '' : `: ${say}`}${attended ? ' [someone there]' : ''}`,
    ),
  ];
}

function findingLine(finding: Finding, job: Job): string {
  const reason = finding.weight === 'decide' ? job.settled[finding.key]?.reason : undefined;
  const settled = reason === undefined ? '' : ` [settled: ${oneLine(reason)}]`;
  const where = whereOf(finding, job);
  return `  ${finding.weight.padEnd(6)} ${oneLine(finding.title)}${where}: ${oneLine(finding.message)}${settled}`;
}

/** Member and coordinates in the output unit, what a person looks for in the drawing. */
function whereOf({ memberId, contourId, place }: Finding, { output }: Job): string {
  const at = place
    ? [
        `x ${formatLengthNumber(place.x, output.unit)} y ${formatLengthNumber(place.y, output.unit)} ${output.unit}`,
      ]
    : [];
  const parts = [memberId ?? contourId ?? '', ...at].filter((part) => part !== '');
  return parts.length > 0 ? ` (${parts.join(', ')})` : '';
}

function reach({ reach: { die, punch } }: Plan): string {
  return die === punch ? sayLength(die) : `${sayLength(die)} in the die, ${sayLength(punch)} in the punch`;
}

function passes(job: Job): string {
  const words = (count: number) =>
    `one rough${count > 1 ? ` and ${count - 1} ${count === 2 ? 'skim' : 'skims'}` : ''}`;
  const die = words(job.passes.length);
  const punch = words(passesOf(job, 'punch').length);
  return die === punch ? die : `die ${die}, punch ${punch}`;
}

function programs(plan: Plan, job: Job): string {
  const wanted = job.output.program;
  const name = { 'wire centre': 'path of the wire centre', compensated: 'contour with G41/G42' } as const;
  const others = plan.blocks.filter((block) => writableKind(blockWork(plan, block), wanted) !== wanted);
  const exception =
    others.length === 0 ? '' : `; ${others.map((block) => block.id).join(', ')} as ${name['wire centre']}`;
  const { style, unit } = job.output;
  const words = style.name === neutralStyle.name ? 'ISO 6983' : `style ${style.name}`;
  return `${words}, ${unit}, ${name[wanted]}${exception}`;
}

const row = (label: string, text: string): string => `${label.padEnd(11)}${oneLine(text)}`;
const oneLine = (text: string): string => text.replace(/[\s\p{C}]+/gu, ' ').trim();
