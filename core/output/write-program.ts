import { stockMaterial } from '../die/stock-materials';
import type { Job } from '../job';
import type { Member, Plan } from '../plan';
import { formatLength, mmPerInch } from '../units';
import { cautions, draftMark } from './cautions';
import { formatProgram, passName } from './format-program';
import { offsetNumber, programSteps, writableKind } from './program-steps';

/**
 * One member's program (ISO 6983-1) in the job's unit: the wire's centre path with the offset off, or the contour
 * with G41/G42 and the offset table as comments. A draft says so in its first line and stops before the first move.
 */
export function writeProgram(member: Member, plan: Plan, job: Job): string {
  const kind = writableKind(member, job.output.program);
  const draft = plan.released ? null : draftMark;
  const unit = job.output.unit;
  const header = [
    ...(draft === null ? [] : [draft]),
    `Diewright - ${job.name} - ${member.id}`,
    `Unit ${unit === 'inch' ? 'inch' : 'mm'}, absolute, zero is the drawing's zero`,
    stockLine(job, plan),
    `Wire ${both(job.wire.diameter)}`,
    ...(kind === 'compensated' ? offsetTable(member) : wireCentreTable(member)),
    ...(kind === job.output.program
      ? []
      : ['A contour with offsets cannot be written here: this is the path of the wire centre']),
    ...(programSteps(member, kind).length === 0 ? ['Nothing to cut: see the findings'] : []),
    'Start with the wire out',
    ...cautions,
  ];
  return formatProgram(programSteps(member, kind), { unit, header, draft });
}

function stockLine(job: Job, plan: Plan): string {
  const name = stockMaterial(job.stock.material)?.name ?? job.stock.material;
  return `Stock ${both(job.stock.thickness)} ${name}, clearance ${both(plan.clearance.perSide)} per side`;
}

function wireCentreTable(member: Member): string[] {
  return [
    'Path of the wire centre: no offset in the control',
    ...passes(member).map(({ pass, offset }) => `${passName(pass)}: ${offsetText(offset)} from the contour`),
  ];
}

function offsetTable(member: Member): string[] {
  return [
    'Contour: set these offsets in the control before running',
    ...passes(member).map(
      (pass) => `D${offsetNumber(pass)} = ${offsetText(pass.offset)} - ${passName(pass.pass)}`,
    ),
  ];
}

/** Each pass once, whatever the number of cuts. */
function passes(member: Member) {
  const all = member.cuts.flatMap((cut) => cut.passes);
  return [...new Map(all.map((pass) => [pass.pass, pass])).values()].sort((a, b) => a.pass - b.pass);
}

const offsetText = (mm: number): string => `${mm.toFixed(4)} mm = ${(mm / mmPerInch).toFixed(5)} in`;

const both = (mm: number): string => `${formatLength(mm, 'mm')} = ${formatLength(mm, 'inch')}`;
