import type { Box, Point } from '../geometry/contour';
import { indexOf, isNearer, nearestSegment, type SegmentIndex } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import { windingAt } from '../geometry/winding';
import type { DrawnHole, Site } from '../plan';

/** A block without edges, with nothing else in it. */
export const openSite: Site = {
  block: { minX: -Infinity, minY: -Infinity, maxX: Infinity, maxY: Infinity },
  frame: 0,
  clamps: [],
  others: [],
  drawnHoles: [],
};

/** A site made ready for many questions. */
export interface SiteIndex {
  readonly site: Site;
  readonly others: SegmentIndex;
}

export const siteIndex = (site: Site): SiteIndex => ({ site, others: indexOf(tableOfRegion(site.others)) });

export type SiteTrouble =
  'outside the block' | 'too near the edge of the block' | 'in a clamp zone' | 'too near another member';

/** Why a disc may not be there; null where it may. `clear` is wanted between the disc and other members, mm. */
export function discTrouble(
  { site, others }: SiteIndex,
  at: Point,
  radius: number,
  clear: number,
): SiteTrouble | null {
  const { block, frame, clamps } = site;
  if (distanceWithin(block, at) < radius - hair) return 'outside the block';
  if (distanceWithin(block, at) < radius + frame - hair) return 'too near the edge of the block';
  if (clamps.some((clamp) => distanceTo(clamp, at) < radius - hair)) return 'in a clamp zone';
  if (windingAt(others, at.x, at.y) > 0 || isNearer(others, at.x, at.y, radius + clear - hair)) {
    return 'too near another member';
  }
  return null;
}

/** Whether a straight cut of half width `clear` keeps out of clamps and other members. Looked at every half width. */
export function isLineFree({ site, others }: SiteIndex, from: Point, to: Point, clear: number): boolean {
  if (site.clamps.length === 0 && site.others.length === 0) return true;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const steps = Math.min(mostLooks, Math.ceil((2 * length) / clear) + 1);
  for (let i = 0; i <= steps; i++) {
    const x = from.x + ((to.x - from.x) * i) / steps;
    const y = from.y + ((to.y - from.y) * i) / steps;
    if (site.clamps.some((clamp) => distanceTo(clamp, { x, y }) < clear)) return false;
    // A disc of twice the half width about every look covers the band between them.
    if (windingAt(others, x, y) > 0 || nearestSegment(others, x, y, 2 * clear).segment >= 0) return false;
  }
  return true;
}
const mostLooks = 10_000;

/** The hole of the drawing whose centre is at a point, within `near` mm. */
export const drawnHoleAt = ({ drawnHoles }: Site, at: Point, near: number): DrawnHole | null =>
  drawnHoles.find(({ x, y }) => Math.hypot(x - at.x, y - at.y) <= near) ?? null;

/** How deep a point lies inside a box; negative outside. */
function distanceWithin({ minX, minY, maxX, maxY }: Box, { x, y }: Point): number {
  return Math.min(x - minX, maxX - x, y - minY, maxY - y);
}

function distanceTo({ minX, minY, maxX, maxY }: Box, { x, y }: Point): number {
  return Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));
}

/** So that a hole exactly as far away as asked is far enough. */
const hair = 1 / 1_000_000;
