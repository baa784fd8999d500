import type { Chain, Contour, Point } from '../geometry/contour';
import { contourLength, reversedChain } from '../geometry/contour-measures';
import { chainBetween, nearestPosition, positionAfter } from '../geometry/loop-position';
import { tolerance } from '../geometry/tolerance';
import type { CutRun } from '../plan';
import { earlyRun } from './early-run';
import * as portable from '../geometry/portable-math';

/**
 * A run along a contour as a control that offsets by itself is told it: begun a little earlier, so that it is cut from
 * its first point on; null where there is no room for that, or where a lead has no straight longer than the offset to
 * switch it on or off along. `run` begins without an overlap; `overlap` is how much earlier it is to begin, mm.
 */
export function programmedRun(
  run: CutRun,
  contour: Contour,
  forwards: boolean,
  offset: number,
  overlap: number,
): CutRun | null {
  const { leadIn, cut, leadOut, wireSide } = run;
  const [first] = cut;
  const waste = comesFrom(leadIn);
  if (!first || !waste || switchingLength(leadIn) <= offset) return null;
  if (switchingLength(reversedChain(leadOut)) <= offset) return null;
  const early = earlyRun(
    cut,
    behind(contour, first, forwards, overlap + mostBehind * offset),
    { waste, side: wireSide, offset },
    overlap,
  );
  const begin = early?.[0];
  if (!early || !begin) return null;
  if (isArcLead(leadIn)) {
    // An arc that runs into the contour arrives in time, and could not be bent to an earlier point.
    return apart(begin, first) <= tolerance.sameBoundary ? run : null;
  }
  return { leadIn: [...leadIn.slice(0, -1), { ...begin, bulge: 0 }], cut: early, leadOut, wireSide };
}

/** Whether a lead runs into the contour by an arc. */
export const isArcLead = (lead: Chain): boolean => (lead.at(-2)?.bulge ?? 0) !== 0;

/** Length of the last straight of a lead towards the contour, before the arc where there is one, mm. */
function switchingLength(lead: Chain): number {
  const to = isArcLead(lead) ? -2 : -1;
  const [from, end] = [lead.at(to - 1), lead.at(to)];
  return from && end && from.bulge === 0 ? apart(from, end) : 0;
}

/** A point that a lead comes from straight at its end: where its last line begins, or on the tangent of its arc. */
function comesFrom(lead: Chain): Point | null {
  const [from, to] = [lead.at(-2), lead.at(-1)];
  if (!from || !to) return null;
  if (from.bulge === 0) return from;
  const way = portable.atan2(to.y - from.y, to.x - from.x) + 2 * portable.atan(from.bulge);
  return { x: to.x - portable.cos(way), y: to.y - portable.sin(way) };
}

/** What lies behind a point of a contour, in the direction of a run: as much as it may begin earlier. */
function behind(contour: Contour, at: Point, forwards: boolean, most: number): Chain {
  const reach = Math.min(most, contourLength(contour) / 2);
  const here = nearestPosition(contour, at);
  return forwards
    ? chainBetween(contour, positionAfter(contour, here, -reach), here)
    : reversedChain(chainBetween(contour, here, positionAfter(contour, here, reach)));
}

/** In offsets; a run never begins earlier by more. */
const mostBehind = 4;

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
