import { carrierOf, fractionAt, type Carrier } from './carrier';
import type { Point } from './contour';
import { facingSites, type FacingSites } from './facing-sites';
import { pointAlong } from './along-segment';
import { num, squaredDistance, type SegmentTable } from './segment-table';
import type { SegmentIndex } from './segment-index';
import { nearestSite, offsetFrom, sameSite, type Site } from './site';
import { atDistance, equallyFar, turningOf } from './site-equations';
import { tolerance } from './tolerance';
import { windingAt } from './winding';

/**
 * A stretch of a segment along which one site of the other boundary is nearest, and the distance to it only rises, only
 * falls or stays. Distances are signed: negative where the stretch lies outside the other region.
 */
export interface DistancePiece {
  readonly segment: number;
  /** Fractions of the segment. */
  readonly from: number;
  readonly to: number;
  /** mm. */
  readonly length: number;
  readonly site: Site;
  readonly sign: 1 | -1;
  /** Signed distance at both ends, mm. */
  readonly atFrom: number;
  readonly atTo: number;
}

/**
 * The exact distance from every point of some segments to the boundary of a region, piece by piece in the order of the
 * table: what is nearest changes where two sites are equally far, or where a foot runs over an end, which are roots of
 * polynomials of degree four or less along a line or arc. What lies between two of them is judged at its middle.
 *
 * A stretch faced by very many sites is halved until few are left, at most down to `distanceBound`, which then bounds
 * the error.
 */
export function distanceProfile(table: SegmentTable, other: SegmentIndex): readonly DistancePiece[] {
  const pieces: DistancePiece[] = [];
  for (let segment = 0; segment < table.count; segment++) {
    pieces.push(...segmentProfile(table, segment, other));
  }
  return pieces;
}

/** The same of one segment; nothing where the other region is empty. */
export function segmentProfile(
  table: SegmentTable,
  segment: number,
  other: SegmentIndex,
): readonly DistancePiece[] {
  const pieces: DistancePiece[] = [];
  if (other.table.count > 0) addPieces(carrierOf(table, segment, 0, 1), other, pieces);
  return pieces;
}

/** The signed distance at a fraction of the piece's segment, mm. */
export function distanceOn(
  table: SegmentTable,
  { segment, site, sign }: Pick<DistancePiece, 'segment' | 'site' | 'sign'>,
  fraction: number,
): number {
  const { x, y } = pointOn(table, segment, fraction);
  return sign * Math.abs(offsetFrom(site, x, y));
}

export function pointOn(table: SegmentTable, segment: number, fraction: number): Point {
  const at = new Float64Array(2);
  pointAlong(table, segment, fraction, at);
  return { x: num(at, 0), y: num(at, 1) };
}

/** Sites up to which all pairs are compared; more of them halve the stretch. */
const manySites = 6;

function addPieces(carrier: Carrier, other: SegmentIndex, pieces: DistancePiece[]): void {
  const facing = facingSites(carrier, other);
  const { length, table, segment, from, to } = carrier;
  if (facing.sites.length > manySites && length > tolerance.distanceBound) {
    const half = (from + to) / 2;
    addPieces(carrierOf(table, segment, from, half), other, pieces);
    addPieces(carrierOf(table, segment, half, to), other, pieces);
    return;
  }
  const cuts = [from, ...ascending(siteChanges(carrier, facing), carrier), to];
  for (const { from: start, to: end, site } of stretchesBetween(
    carrier,
    other.table,
    facing.segments,
    cuts,
  )) {
    addMonotone(carrierOf(table, segment, start, end), site, other, pieces);
  }
}

/** Arguments at which another site may become the nearest. */
const siteChanges = (carrier: Carrier, { sites, ends }: FacingSites): readonly number[] => [
  ...ends,
  ...sites.flatMap((site, k) => sites.slice(0, k).flatMap((before) => equallyFar(before, site, carrier))),
];

interface Stretch {
  readonly from: number;
  to: number;
  readonly site: Site;
}

/** The stretches between the cuts, those with the same site put together again. */
function stretchesBetween(
  { table, segment }: Carrier,
  other: SegmentTable,
  segments: readonly number[],
  cuts: readonly number[],
): readonly Stretch[] {
  const found: Stretch[] = [];
  for (let k = 0; k + 1 < cuts.length; k++) {
    const [from, to] = [cuts[k] as number, cuts[k + 1] as number];
    const { x, y } = pointOn(table, segment, (from + to) / 2);
    const site = nearestOf(other, segments, x, y);
    const last = found.at(-1);
    if (last && sameSite(last.site, site)) last.to = to;
    else found.push({ from, to, site });
  }
  return found;
}

function nearestOf(other: SegmentTable, segments: readonly number[], x: number, y: number): Site {
  let best = Infinity;
  let nearest = -1;
  for (const j of segments) {
    const d = squaredDistance(other, j, x, y);
    if (d < best) {
      best = d;
      nearest = j;
    }
  }
  return nearestSite(other, nearest, x, y);
}

/** Cuts a stretch where the distance turns or is 0, so that each piece is monotone and on one side. */
function addMonotone(carrier: Carrier, site: Site, other: SegmentIndex, pieces: DistancePiece[]): void {
  const { table, segment } = carrier;
  const inner = ascending([...turningOf(site, carrier), ...atDistance(site, 0, carrier)], carrier);
  const cuts = [carrier.from, ...inner, carrier.to];
  for (let k = 0; k + 1 < cuts.length; k++) {
    const [from, to] = [cuts[k] as number, cuts[k + 1] as number];
    const middle = pointOn(table, segment, (from + to) / 2);
    const sign = windingAt(other, middle.x, middle.y) > 0 ? 1 : -1;
    const whole = { segment, from, to, site, sign } as const;
    pieces.push({
      ...whole,
      length: (carrier.length * (to - from)) / (carrier.to - carrier.from),
      atFrom: distanceOn(table, whole, from),
      atTo: distanceOn(table, whole, to),
    });
  }
}

/** Arguments of a carrier as fractions of its segment, ascending, each once, its ends left out. */
function ascending(ts: readonly number[], carrier: Carrier): readonly number[] {
  const fractions = ts.map((t) => fractionAt(carrier, t)).sort((a, b) => a - b);
  const least = tolerance.rootWidth;
  return fractions.filter(
    (f, k) => f - (k === 0 ? carrier.from : (fractions[k - 1] as number)) > least && carrier.to - f > least,
  );
}
