import { materialName, type Job } from '../job';
import { neutralStyle } from '../neutral-style';
import type { Block, PassPath, Plan } from '../plan';
import type { ProgramStyle } from '../program-style';
import { sayAngle } from '../say';
import { formatLength, mmPerInch } from '../units';
import { blockWork, type WorkStep } from '../wire/block-work';
import { cautions, draftMark } from './cautions';
import { formatProgram } from './format-program';
import { offsetWord } from './offset-word';
import { passName } from './pass-name';
import { offsetNumber, programSteps, writableKind } from './program-steps';

/**
 * The program of one block in the job's unit and style: the wire's centre path with the offset off, or the contour
 * with G41/G42 and the offset table as comments. A draft says so in its first line and stops before the first move.
 */
export function writeProgram(block: Block, plan: Plan, job: Job): string {
  const work = blockWork(plan, block);
  const kind = writableKind(work, job.output.program);
  const steps = programSteps(work, kind);
  const draft = plan.released ? null : draftMark;
  const { unit, style } = job.output;
  const header = [
    ...(draft === null ? [] : [draft]),
    `Diewright - ${job.name} - ${block.id}`,
    ...(block.memberIds.length > 1 ? [`Cuts ${block.memberIds.join(', ')}`] : []),
    `Unit ${unit === 'inch' ? 'inch' : 'mm'}, absolute, zero is the drawing's zero`,
    stockLine(job, plan),
    `Wire ${both(job.wire.diameter)}`,
    ...(kind === 'compensated' ? offsetTable(work, style) : wireCentreTable(work)),
    ...(isOneBlock(block, plan) ? oneBlockLines(work) : reliefLines(work)),
    ...(kind === job.output.program
      ? []
      : ['A contour with offsets cannot be written here: this is the path of the wire centre']),
    ...(steps.length === 0 ? ['Nothing to cut: see the findings'] : []),
    ...(style.name === neutralStyle.name ? [] : [`Program style ${style.name}`]),
    'Start with the wire out',
    ...cautions,
  ];
  return formatProgram(steps, { unit, header, draft, style });
}

function stockLine(job: Job, plan: Plan): string {
  return `Stock ${both(job.stock.thickness)} ${materialName(job)}, clearance ${both(plan.clearance.perSide)} per side`;
}

function wireCentreTable(work: readonly WorkStep[]): string[] {
  return [
    'Path of the wire centre: no offset in the control',
    ...passes(work).map((pass) => `${passName(pass)}: ${offsetText(pass.offset)} from the contour`),
  ];
}

function offsetTable(work: readonly WorkStep[], { offsets }: ProgramStyle): string[] {
  return [
    'Contour: set these offsets in the control before running',
    ...passes(work).map(
      (pass) => `${offsetWord(offsets, offsetNumber(pass))} = ${offsetText(pass.offset)} - ${passName(pass)}`,
    ),
  ];
}

const isOneBlock = ({ memberIds }: Block, { pairs }: Plan): boolean =>
  pairs.some((pair) => pair.isOneBlock && memberIds.includes(pair.die.id));

/** How punch and die come out of one block. */
function oneBlockLines(work: readonly WorkStep[]): string[] {
  const relief = work.find(({ member }) => member.relief)?.member.relief;
  if (!relief) return [];
  const { height, angle } = relief;
  return [
    `Punch and die from one block by one cut, the wire leaning by ${sayAngle(angle, 4)}`,
    "Clamp the block with the die's cutting edge down; the punch's edge is the upper face",
    `X and Y are the wire at the lower face, U and V its upper end, ${both(height)} up, from there`,
    'The start hole lies on the cut: erode it along the leaning wire, no wider than the cut, or both edges are marked',
    'One pass, no leads and no skim: try gap and angle on a test piece, they make the clearance',
  ];
}

/** How the block lies and what U and V mean, where the wire leans. Heights are measured from the cutting edge. */
function reliefLines(work: readonly WorkStep[]): string[] {
  const relief = work.find(({ member }) => member.relief)?.member.relief;
  if (!relief) return [];
  const { land, height, angle } = relief;
  return [
    'Clamp the die with its cutting edge down: heights are measured from it',
    `X and Y are the wire ${land > 0 ? `${both(land)} up, where the land ends` : 'at the cutting edge'}`,
    `U and V are its upper end, ${both(height)} up, from there; both ends move in the same time`,
    land > 0
      ? `Relief ${sayAngle(angle)} per side above the land, the last cut of each opening`
      : `All passes tapered by ${sayAngle(angle)} per side`,
  ];
}

/** Each pass once, whatever the number of cuts. */
function passes(work: readonly WorkStep[]): readonly PassPath[] {
  const all = work.flatMap(({ cut }) => cut.passes);
  return [...new Map(all.map((pass) => [pass.pass, pass])).values()].sort((a, b) => a.pass - b.pass);
}

const offsetText = (mm: number): string => `${mm.toFixed(4)} mm = ${(mm / mmPerInch).toFixed(5)} in`;

const both = (mm: number): string => `${formatLength(mm, 'mm')} = ${formatLength(mm, 'inch')}`;
