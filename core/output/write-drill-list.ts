import { heightOf, type Job } from '../job';
import type { Plan, StartHole } from '../plan';
import { mmPerInch } from '../units';
import { csvText } from './csv-text';
import { namedHoles } from './named-holes';

/**
 * The holes to be made as CSV (RFC 4180), in mm and inch, from the drawing's zero: what the drill or the hole eroder is
 * set up by. Holes that the drawing has stand there too, so that nobody looks for them.
 */
export function writeDrillList(plan: Plan, job: Job): string {
  const header = [
    ...[
      'hole',
      'block',
      'cut',
      'x (mm)',
      'y (mm)',
      'diameter (mm)',
      'x (inch)',
      'y (inch)',
      'diameter (inch)',
    ],
    ...['depth (mm)', 'depth (inch)', 'made by'],
  ];
  const rows = namedHoles(plan).map(({ name, blockId, member, cutId, hole }) => {
    const sizes = [hole.x, hole.y, hole.diameter];
    const depth = heightOf(job, member.part);
    return [
      ...[name, blockId, cutId],
      ...sizes.map(mm),
      ...sizes.map(inch),
      ...[mm(depth), inch(depth)],
      madeBy(hole),
    ];
  });
  return csvText([header, ...rows]);
}

function madeBy({ kind, lean }: StartHole): string {
  if (kind === 'drawn') return 'in the drawing';
  return lean
    ? `to be eroded along the leaning wire, upper end at U ${mm(lean.x)} V ${mm(lean.y)} mm`
    : 'to be drilled or eroded through';
}

/** A hole is placed to a hundredth; a digit more keeps the other unit from moving it. */
const mm = (value: number): string => value.toFixed(3).replace(/^-(0\.0+)$/, '$1');
const inch = (value: number): string => (value / mmPerInch).toFixed(5).replace(/^-(0\.0+)$/, '$1');
