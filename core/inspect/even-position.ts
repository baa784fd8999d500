import type { Point, Region } from '../geometry/contour';
import { contourBox, boxAround } from '../geometry/contour-measures';
import { distanceOn, distanceProfile, pointOn, type DistancePiece } from '../geometry/distance-profile';
import { indexOf, type SegmentIndex } from '../geometry/segment-index';
import { directionAt } from '../geometry/along-segment';
import { num, tableOfRegion, type SegmentTable } from '../geometry/segment-table';
import { offsetFrom, type Site } from '../geometry/site';
import { tolerance } from '../geometry/tolerance';
import { linearMinimax, type LinearValue } from './linear-minimax';
import { movedRegion, type Motion } from './motion';

export interface EvenPosition {
  readonly motion: Motion;
  /** Least clearance there, mm. */
  readonly least: number;
}

/**
 * Where the punch has to stand so that its least clearance in the die opening is as great as can be: the clearance is
 * then as even as the two contours let it be. Found from the present position: every step maximises the least of the
 * clearances as they change to first order (a linear program), no farther than that can be trusted, and is taken only
 * where the exact least clearance grows. Ends where no small motion helps any more; the least clearance there is within
 * `distanceBound` of the best nearby. Null where either region is empty.
 */
export function evenPosition(punch: Region, die: Region): EvenPosition | null {
  const other = indexOf(tableOfRegion(die));
  const about = middleOf(punch);
  const arm = farthestFrom(about, punch);
  let motion: Motion = { dx: 0, dy: 0, turn: 0, about };
  let now = lookAt(punch, motion, other);
  if (!now) return null;
  let reach = Math.max(now.greatest, -now.least, tolerance.distanceBound);
  while (reach > tolerance.distanceBound / 10) {
    const wanted = linearMinimax(now.values(arm), reach);
    const [dx = 0, dy = 0, arc = 0] = wanted.step;
    const gain = wanted.least - now.least;
    if (gain <= tolerance.distanceBound / 100) break;
    const next: Motion = {
      ...motion,
      dx: motion.dx + dx,
      dy: motion.dy + dy,
      turn: motion.turn + arc / arm,
    };
    const there = lookAt(punch, next, other);
    const won = there ? there.least - now.least : 0;
    if (there && won > 0) [motion, now] = [next, there];
    reach = won > gain / 2 ? reach * 2 : reach / 4;
  }
  return withoutIdleMotion(punch, other, { motion, least: now.least });
}

/** Takes back what of the motion wins nothing: a round punch need not be turned. */
function withoutIdleMotion(punch: Region, other: SegmentIndex, found: EvenPosition): EvenPosition {
  let best = found;
  for (const part of ['turn', 'dx', 'dy'] as const) {
    const motion = { ...best.motion, [part]: 0 };
    const there = lookAt(punch, motion, other);
    if (there && there.least >= found.least - tolerance.distanceBound / 10)
      best = { motion, least: there.least };
  }
  return best;
}

interface Look {
  readonly least: number;
  readonly greatest: number;
  /** How the clearances change with a shift along x and y and a turn, the turn as the arc at the arm's end. */
  values(arm: number): readonly LinearValue[];
}

function lookAt(punch: Region, motion: Motion, other: SegmentIndex): Look | null {
  const table = tableOfRegion(movedRegion(motion, punch));
  const profile = distanceProfile(table, other);
  if (profile.length === 0) return null;
  const centre = { x: motion.about.x + motion.dx, y: motion.about.y + motion.dy };
  return {
    least: profile.reduce((least, { atFrom, atTo }) => Math.min(least, atFrom, atTo), Infinity),
    greatest: profile.reduce((most, { atFrom, atTo }) => Math.max(most, atFrom, atTo), -Infinity),
    values: (arm) => profile.flatMap((piece) => valuesOf(table, piece, centre, arm)),
  };
}

/** At the ends of each piece and in between: on arcs the least place wanders while the punch moves. */
const shares = [0, 0.25, 0.5, 0.75, 1];

function valuesOf(
  table: SegmentTable,
  piece: DistancePiece,
  centre: Point,
  arm: number,
): readonly LinearValue[] {
  // A piece lies on one side of its site, which only its middle tells surely: its ends may touch it.
  const middle = pointOn(table, piece.segment, (piece.from + piece.to) / 2);
  const side = offsetFrom(piece.site, middle.x, middle.y) < 0 ? -piece.sign : piece.sign;
  return shares.map((share) => {
    const fraction = piece.from + share * (piece.to - piece.from);
    const at = pointOn(table, piece.segment, fraction);
    const normal = outwardOf(piece.site, at) ?? leftOf(table, piece.segment, at);
    const [gx, gy] = [side * normal.x, side * normal.y];
    return {
      value: distanceOn(table, piece, fraction),
      gradient: [gx, gy, ((at.x - centre.x) * gy - (at.y - centre.y) * gx) / arm],
    };
  });
}

/** Unit direction in which a site's offset grows; null at the centre of a circle, or at an end itself. */
function outwardOf(site: Site, { x, y }: Point): Point | null {
  if (site.kind === 'line') return { x: site.nx, y: site.ny };
  const length = Math.hypot(x - site.x, y - site.y);
  return length <= tolerance.samePoint ? null : { x: (x - site.x) / length, y: (y - site.y) / length };
}

/** Into the punch: where its edge lies on a corner of the die, that way makes room. */
function leftOf(table: SegmentTable, segment: number, { x, y }: Point): Point {
  const along = new Float64Array(2);
  directionAt(table, segment, x, y, along);
  return { x: -num(along, 1), y: num(along, 0) };
}

function middleOf(region: Region): Point {
  const box = region.map(contourBox).reduce(boxAround, contourBox([]));
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
}

function farthestFrom({ x, y }: Point, region: Region): number {
  return region
    .flat()
    .reduce<number>(
      (most, vertex) => Math.max(most, Math.hypot(vertex.x - x, vertex.y - y)),
      tolerance.distanceBound,
    );
}
