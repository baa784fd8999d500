import { createPipeline, jobOnDrawing, type Job } from '../core/index';
import { deviationAt, referenceOf } from '../core/inspect/deviation';
import { movedPoint } from '../core/inspect/motion';
import type { Member } from '../core/plan';
import { contourLength } from '../core/geometry/contour-measures';
import { pointAt, positionAfter } from '../core/geometry/loop-position';
import { SeededRandom } from './fuzz/seeded-random';

/** The stock and wire that the list was measured with. */
export const measuredJob = (fileName: string, drawing: string): Job => ({
  ...jobOnDrawing(fileName, new TextEncoder().encode(drawing)),
  stock: { material: 'brass', thickness: 0.2 },
  wire: { diameter: 0.1 },
});

/**
 * Points of punch and die of a drawing's first contour as a vision system might list them: semicolons and decimal commas,
 * a few µm of scatter, measured where the part happened to lie. The punch is worn by 6 µm along a stretch of its way
 * round, and one point of the die lies on a burr.
 */
export function measuredPoints(fileName: string, drawing: string): string {
  const plan = createPipeline().plan(measuredJob(fileName, drawing));
  if (!plan.ok) throw new Error(plan.problem.what);
  const [pair] = plan.value.pairs;
  if (!pair) throw new Error('The drawing gives no pair');
  const random = new SeededRandom(41);
  const rows = [pair.punch, pair.die].flatMap((member) => rowsOf(member, random));
  return ['# Measured points, our own invention; mm', 'X;Y;Point;Feature', ...rows, ''].join('\n');
}

const count = 90;

function rowsOf({ designed, role, id }: Member, random: SeededRandom): string[] {
  const [contour] = designed;
  if (!contour) return [];
  const length = contourLength(contour);
  const reference = referenceOf(designed, role === 'punch' ? 'inside' : 'outside');
  const lay = { dx: role === 'punch' ? 12.31 : 64.05, dy: -4.57, turn: 0.0052, about: { x: 0, y: 0 } };
  return Array.from({ length: count }, (_, k) => {
    const along = (length * (k + 0.5)) / count;
    const on = pointAt(contour, positionAfter(contour, { segment: 0, along: 0 }, along));
    const { nx, ny } = deviationAt(reference, on);
    const worn = role === 'punch' && k >= 20 && k < 30 ? -0.006 : 0;
    const burr = role === 'die' && k === 60 ? 0.021 : 0;
    const off = 0.003 * (random.next() - 0.5) + worn + burr;
    const { x, y } = movedPoint(lay, { x: on.x + off * nx, y: on.y + off * ny });
    const cells = [x, y].map((value) => value.toFixed(4).replace('.', ','));
    return [...cells, `${role === 'punch' ? 'P' : 'D'}${k + 1}`, id].join(';');
  });
}
