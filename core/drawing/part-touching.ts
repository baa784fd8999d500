import type { Contour, Point, Vertex } from '../geometry/contour';
import { chainLength, contourArea } from '../geometry/contour-measures';
import { indexOf, isNearer, type SegmentIndex } from '../geometry/segment-index';
import { tableOfChain, tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import { windingAt } from '../geometry/winding';
import { cutRing, middleOfRun } from './cut-ring';
import { openedRing } from './lies-on';
import type { RepairLog } from './repair-log';
import { ringAlong, type Ring } from './ring';

/**
 * A ring that touches itself at places, parted there into rings that only touch each other; null where it truly
 * crosses itself. A spike that leads out and back holds no area and goes.
 */
export function partTouching(ring: Ring, places: readonly Point[], log: RepairLog): readonly Ring[] | null {
  const loops = loopsOf(ring.contour, places);
  if (loops.length < 2) return null;
  const lengths = loops.map((loop) => chainLength(openedRing(loop)));
  const isArea = loops.map(
    (loop, i) => Math.abs(contourArea(loop)) > ((lengths[i] as number) / 2) * tolerance.duplicate,
  );
  const solid = loops.filter((_, i) => isArea[i]);
  if (solid.length === 0 || !isPlain(solid)) return null;
  loops.forEach((loop, i) => {
    const at = loop[0] as Vertex;
    if (!isArea[i]) log.add('overlap', at, lengths[i] as number);
  });
  if (solid.length > 1) for (const place of places) log.add('self-touch', place, 0);
  return solid.map((loop, i) =>
    ringAlong(i === 0 ? ring : { ...ring, gaps: [], steps: [] }, loop, chainLength(openedRing(loop))),
  );
}

/** A contour with its segments by place, made once however many others it meets. */
export interface Placed {
  readonly contour: Contour;
  readonly index: SegmentIndex;
}

export const placed = (contour: Contour): Placed => ({
  contour,
  index: indexOf(tableOfChain(openedRing(contour))),
});

/** Whether of two rings that meet at places one passes through the other, or they only touch. */
export function passesThrough(a: Placed, b: Placed, places: readonly Point[]): boolean {
  return changesSide(a, b, places) || changesSide(b, a, places);
}

function changesSide(one: Placed, { index }: Placed, places: readonly Point[]): boolean {
  let isIn = false;
  let isOut = false;
  for (const run of cutRing(one.contour, one.index, places)) {
    const { x, y } = middleOfRun(run);
    if (isNearer(index, x, y, tolerance.zeroLength)) continue;
    if (windingAt(index, x, y) !== 0) isIn = true;
    else isOut = true;
    if (isIn && isOut) return true;
  }
  return false;
}

/** Walking along the ring, every return to a place closes a loop. */
function loopsOf(contour: Contour, places: readonly Point[]): readonly Contour[] {
  const runs = cutRing(contour, placed(contour).index, places);
  const loops: Vertex[][] = [];
  const stack: { readonly place: number; readonly vertices: readonly Vertex[] }[] = [];
  for (const run of runs) {
    stack.push({ place: run.from, vertices: run.vertices.slice(0, -1) });
    const since = stack.findIndex(({ place }) => place === run.to);
    if (since >= 0) loops.push(stack.splice(since).flatMap(({ vertices }) => vertices));
  }
  // What is left on the stack ran past the start: the places did not pair up.
  return stack.length === 0 ? loops : [];
}

/** Loops that nowhere pass through each other, and turn as they must: alike side by side, oppositely one in the other. */
function isPlain(loops: readonly Contour[]): boolean {
  if (loops.length > mostLoops) return false;
  const indices = loops.map((loop) => indexOf(tableOfRegion([loop])));
  const senses = loops.map((loop) => Math.sign(contourArea(loop)));
  const depths = loops.map((loop, i) => {
    let depth = 0;
    for (const [j, index] of indices.entries()) {
      if (j === i) continue;
      const sides = sidesOf(loop, index);
      if (sides.isIn && sides.isOut) return Number.NaN;
      if (sides.isIn) depth++;
    }
    return depth;
  });
  if (depths.some(Number.isNaN)) return false;
  const outer = senses[depths.indexOf(0)] as number;
  return senses.every((sense, i) => sense === outer * ((depths[i] as number) % 2 === 0 ? 1 : -1));
}

const mostLoops = 64;

function sidesOf(loop: Contour, index: ReturnType<typeof indexOf>): { isIn: boolean; isOut: boolean } {
  let isIn = false;
  let isOut = false;
  loop.forEach((from, i) => {
    const to = loop[(i + 1) % loop.length] as Vertex;
    const { x, y } = middleOfRun({ vertices: [from, { ...to, bulge: 0 }], from: 0, to: 0 });
    if (isNearer(index, x, y, tolerance.zeroLength)) return;
    if (windingAt(index, x, y) !== 0) isIn = true;
    else isOut = true;
  });
  return { isIn, isOut };
}
