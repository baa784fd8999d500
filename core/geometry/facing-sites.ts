import type { Carrier } from './carrier';
import type { Box } from './contour';
import { leastInSpan, rootsInSpan, type Polynomial } from './roots-in-span';
import { nearestSegment, type SegmentIndex } from './segment-index';
import { squaredDistance } from './segment-table';
import {
  alongCarrier,
  besideAlong,
  endOf,
  insideOf,
  nearestSite,
  offsetFrom,
  sameSite,
  type Site,
} from './site';
import { turningOf } from './site-equations';
import { tolerance } from './tolerance';

export interface FacingSites {
  /** Sites of which one is nearest at every point of the carrier; a few more may be among them. */
  readonly sites: readonly Site[];
  /** The segments they belong to. */
  readonly segments: readonly number[];
  /** Arguments at which a foot runs over an end. */
  readonly ends: readonly number[];
}

/**
 * What of a boundary can be nearest to some point of a carrier: what comes as near as the site that is nearest to its
 * middle is at its farthest.
 */
export function facingSites(carrier: Carrier, other: SegmentIndex): FacingSites {
  // The room keeps rounding from leaving out what is exactly as near.
  const most = farthestFrom(carrier, other) + tolerance.samePoint;
  const sites: Site[] = [];
  const segments: number[] = [];
  const ends: number[] = [];
  const add = (site: Site): void => {
    if (comesWithin(site, most, carrier) && !sites.some((known) => sameSite(known, site))) sites.push(site);
  };
  const { x, y } = carrier.middle;
  const reach = most + carrier.length / 2;
  for (const j of segmentsNear(carrier, other, most)) {
    if (squaredDistance(other.table, j, x, y) > reach * reach) continue;
    const before = sites.length;
    const beside = besideAlong(other.table, j, carrier);
    if (beside.every((side) => leastInSpan(negated(side)) <= 0)) add(insideOf(other.table, j));
    // The other end begins the segment that follows in the loop.
    add(endOf(other.table, j, 0));
    segments.push(j);
    if (sites.length > before) for (const side of beside) ends.push(...rootsInSpan(side, 0));
  }
  return { sites, segments, ends };
}

/** No point of the carrier is farther from the boundary than this, mm; exact where one site faces all of it. */
function farthestFrom(carrier: Carrier, other: SegmentIndex): number {
  const { x, y } = carrier.middle;
  const { segment, distance } = nearestSegment(other, x, y);
  return farthest(carrier, nearestSite(other.table, segment, x, y), other, distance);
}

function farthest(carrier: Carrier, site: Site, other: SegmentIndex, atMiddle: number): number {
  const byLength = atMiddle + carrier.length / 2;
  const isAlways =
    (site.kind === 'circle' && site.radius === 0) ||
    besideAlong(other.table, site.segment, carrier).every((side) => leastInSpan(side) >= 0);
  if (!isAlways) return byLength;
  const { x1, x2, y1, y2, w2, middle } = carrier;
  const distances = [-1, 1, ...turningOf(site, carrier)].map((t) => {
    const w = 1 + w2 * t * t;
    const x = middle.x + (t * (x1 + t * x2)) / w;
    const y = middle.y + (t * (y1 + t * y2)) / w;
    return Math.abs(offsetFrom(site, x, y));
  });
  return Math.min(byLength, Math.max(...distances));
}

/** Whether some point of the carrier may be as near to the site's whole line or circle. */
function comesWithin(site: Site, distance: number, carrier: Carrier): boolean {
  const along = alongCarrier(site, carrier);
  if (site.kind === 'line') {
    return leastAbove(along, carrier, distance) <= 0 && leastAbove(negated(along), carrier, distance) <= 0;
  }
  const outer = site.radius + distance;
  if (leastAbove(along, carrier, outer * outer) > 0) return false;
  const inner = site.radius - distance;
  return inner <= 0 || leastAbove(negated(along), carrier, -inner * inner) <= 0;
}

/** The least of P − level · W, from below. */
const leastAbove = (p: Polynomial, { w2 }: Carrier, level: number): number =>
  leastInSpan([p[0] - level, p[1], p[2] - level * w2, p[3], p[4]]);

const negated = (p: Polynomial): Polynomial => [-p[0], -p[1], -p[2], -p[3], -p[4]];

function segmentsNear(carrier: Carrier, other: SegmentIndex, reach: number): readonly number[] {
  const { minX, minY, maxX, maxY } = carrierBox(carrier);
  const found = other.tree?.search(minX - reach, minY - reach, maxX + reach, maxY + reach) ?? [];
  return found.sort((a, b) => a - b);
}

/** A box around a carrier: of a line its ends', of an arc that of the disc about its middle through its ends. */
function carrierBox({ middle, x1, y1, w2, q2 }: Carrier): Box {
  const round = Math.sqrt(q2 / (1 + w2));
  const [halfX, halfY] = w2 === 0 ? [Math.abs(x1), Math.abs(y1)] : [round, round];
  return {
    minX: middle.x - halfX,
    minY: middle.y - halfY,
    maxX: middle.x + halfX,
    maxY: middle.y + halfY,
  };
}
