import type { Drawing } from './drawing/drawing';
import type { Box } from './geometry/contour';
import { contourBox } from './geometry/contour-measures';
import type { Job } from './job';
import { drawingUnits } from './units';

export interface FollowedJob {
  readonly job: Job;
  /** Contours that something was chosen for and that are no longer there: the choice is gone with them. */
  readonly lost: readonly string[];
}

/**
 * A job whose drawing is read differently than before (another unit, gap tolerance, layers), with everything that was
 * chosen for single contours still on the same ones: their ids go by order, and another reading may give another order.
 * The very job where nothing changes.
 */
export function followContours(job: Job, before: Drawing, now: Drawing): FollowedJob {
  const ids = chosenIds(job);
  if (ids.size === 0) return { job, lost: [] };
  const scale = drawingUnits[now.unit].mm / drawingUnits[before.unit].mm;
  const nowBoxes = boxesOf(now);
  const beforeBoxes = new Map(boxesOf(before).map(({ id, box }) => [id, box]));
  const renamed = new Map<string, string>();
  const lost: string[] = [];
  for (const id of ids) {
    const box = beforeBoxes.get(id);
    const there = box && nearest(nowBoxes, scaled(box, scale));
    if (there && ![...renamed.values()].includes(there)) renamed.set(id, there);
    // What is in neither reading was stale before.
    else if (box) lost.push(id);
  }
  const isSame = scale === 1 && lost.length === 0 && [...renamed].every(([from, to]) => from === to);
  if (isSame) return { job, lost };
  return { job: withNames(job, (id) => (beforeBoxes.has(id) ? renamed.get(id) : id), scale), lost };
}

/** Every contour that something was chosen for. */
const chosenIds = ({ drawing, uses, sizeShifts, corners, cuts, dieSet }: Job): ReadonlySet<string> =>
  new Set([
    ...Object.keys(drawing.choice.contours),
    ...Object.keys(uses),
    ...Object.keys(sizeShifts),
    ...Object.keys(dieSet.plugFits),
    ...corners.exceptions.map(({ contourId }) => contourId),
    ...Object.keys(cuts).map(contourOfCut),
  ]);

/** The second word of a member's name, and so of its cuts', is its contour (member-id.ts). */
const contourOfCut = (cutId: string): string => cutId.split('-')[1] ?? '';

function withNames(job: Job, nameOf: (id: string) => string | undefined, scale: number): Job {
  const renamed = <V>(record: Readonly<Record<string, V>>, nameNow: (key: string) => string | undefined) =>
    Object.fromEntries(
      Object.entries(record).flatMap(([key, value]) => {
        const name = nameNow(key);
        return name === undefined ? [] : [[name, value] as const];
      }),
    );
  const cutName = (cutId: string): string | undefined => {
    const [use = '', , ...rest] = cutId.split('-');
    const name = nameOf(contourOfCut(cutId));
    return name === undefined ? undefined : [use, name, ...rest].join('-');
  };
  const { choice } = job.drawing;
  return {
    ...job,
    drawing: { ...job.drawing, choice: { ...choice, contours: renamed(choice.contours, nameOf) } },
    uses: renamed(job.uses, nameOf),
    sizeShifts: renamed(job.sizeShifts, nameOf),
    dieSet: { ...job.dieSet, plugFits: renamed(job.dieSet.plugFits, nameOf) },
    corners: {
      ...job.corners,
      exceptions: job.corners.exceptions.flatMap((exception) => {
        const contourId = nameOf(exception.contourId);
        return contourId === undefined
          ? []
          : [{ ...exception, contourId, x: exception.x * scale, y: exception.y * scale }];
      }),
    },
    cuts: renamed(job.cuts, cutName),
  };
}

interface NamedBox {
  readonly id: string;
  readonly box: Box;
}

const boxesOf = ({ contours, leftOut }: Drawing): readonly NamedBox[] =>
  [...contours, ...leftOut].map(({ id, contour }) => ({ id, box: contourBox(contour) }));

const scaled = ({ minX, minY, maxX, maxY }: Box, scale: number): Box => ({
  minX: minX * scale,
  minY: minY * scale,
  maxX: maxX * scale,
  maxY: maxY * scale,
});

/** The contour whose box differs least on any side, by no more than a hundredth of its size: a gap closed moves an end. */
function nearest(candidates: readonly NamedBox[], box: Box): string | undefined {
  let best: string | undefined;
  let least = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 100;
  for (const { id, box: other } of candidates) {
    const off = Math.max(
      Math.abs(other.minX - box.minX),
      Math.abs(other.minY - box.minY),
      Math.abs(other.maxX - box.maxX),
      Math.abs(other.maxY - box.maxY),
    );
    if (off > least || (best !== undefined && off === least)) continue;
    best = id;
    least = off;
  }
  return best;
}
