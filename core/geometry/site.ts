import type { Carrier } from './carrier';
import { isBesideArc, num, squaredDistance, type SegmentTable } from './segment-table';
import type { Polynomial } from './roots-in-span';

/**
 * What a point can be nearest to: the inside of a line or of an arc, or an end. A line is its unit normal (nx, ny) and a
 * point on it; an arc its centre and radius; an end the same with radius 0.
 */
export type Site =
  | { readonly kind: 'line'; readonly segment: number; x: number; y: number; nx: number; ny: number }
  | { readonly kind: 'circle'; readonly segment: number; x: number; y: number; radius: number };

/** The inside of a segment as a site. */
export function insideOf(table: SegmentTable, segment: number): Site {
  const radius = num(table.radius, segment);
  if (radius > 0) {
    return { kind: 'circle', segment, x: num(table.cx, segment), y: num(table.cy, segment), radius };
  }
  const x = num(table.x0, segment);
  const y = num(table.y0, segment);
  const dx = num(table.x1, segment) - x;
  const dy = num(table.y1, segment) - y;
  const length = Math.hypot(dx, dy);
  return { kind: 'line', segment, x, y, nx: -dy / length, ny: dx / length };
}

/** An end of a segment as a site. */
export const endOf = (table: SegmentTable, segment: number, end: 0 | 1): Site => ({
  kind: 'circle',
  segment,
  x: num(end === 0 ? table.x0 : table.x1, segment),
  y: num(end === 0 ? table.y0 : table.y1, segment),
  radius: 0,
});

/** What of a segment is nearest to a point: its inside or one of its ends. */
export function nearestSite(table: SegmentTable, segment: number, x: number, y: number): Site {
  if (isBeside(table, segment, x, y)) return insideOf(table, segment);
  const start = (num(table.x0, segment) - x) ** 2 + (num(table.y0, segment) - y) ** 2;
  return endOf(table, segment, start <= squaredDistance(table, segment, x, y) ? 0 : 1);
}

export const sameSite = (a: Site, b: Site): boolean =>
  a.kind === b.kind &&
  a.x === b.x &&
  a.y === b.y &&
  (a.kind === 'circle' && b.kind === 'circle' ? a.radius === b.radius : a.segment === b.segment);

/** Distance of a point from a site's whole line or circle, mm, with a sign that changes across it. */
export function offsetFrom(site: Site, x: number, y: number): number {
  if (site.kind === 'line') return (x - site.x) * site.nx + (y - site.y) * site.ny;
  return Math.hypot(x - site.x, y - site.y) - site.radius;
}

/** The point of a site's whole line or circle that is nearest to a point. */
export function footOn(site: Site, x: number, y: number): { x: number; y: number } {
  const off = offsetFrom(site, x, y);
  if (site.kind === 'line') return { x: x - off * site.nx, y: y - off * site.ny };
  const length = off + site.radius;
  if (length === 0) return { x: site.x + site.radius, y: site.y };
  const share = site.radius / length;
  return { x: site.x + (x - site.x) * share, y: site.y + (y - site.y) * share };
}

/**
 * The distance along a carrier as polynomials over its W: a line's signed offset N / W, or the squared distance from a
 * circle's centre Q / W.
 */
export function alongCarrier(site: Site, carrier: Carrier): Polynomial {
  const { middle, x1, x2, y1, y2, w2, q2 } = carrier;
  const dx = site.x - middle.x;
  const dy = site.y - middle.y;
  if (site.kind === 'line') {
    const off = -(dx * site.nx + dy * site.ny);
    return [off, x1 * site.nx + y1 * site.ny, x2 * site.nx + y2 * site.ny + off * w2, 0, 0];
  }
  const square = dx * dx + dy * dy;
  return [square, -2 * (dx * x1 + dy * y1), q2 - 2 * (dx * x2 + dy * y2) + square * w2, 0, 0];
}

/**
 * Two polynomials (over W) that are not negative where a carrier's point is beside a segment, so that the segment's
 * inside and not an end is nearest on its whole line or circle.
 */
export function besideAlong(table: SegmentTable, segment: number, carrier: Carrier): readonly Polynomial[] {
  const { middle, x1, x2, y1, y2, w2 } = carrier;
  const linear = (ox: number, oy: number, ux: number, uy: number): Polynomial => {
    const off = (middle.x - ox) * ux + (middle.y - oy) * uy;
    return [off, x1 * ux + y1 * uy, x2 * ux + y2 * uy + off * w2, 0, 0];
  };
  const ax = num(table.x0, segment);
  const ay = num(table.y0, segment);
  const bx = num(table.x1, segment);
  const by = num(table.y1, segment);
  if (num(table.radius, segment) === 0) {
    const length = Math.hypot(bx - ax, by - ay);
    const ux = (bx - ax) / length;
    const uy = (by - ay) / length;
    return [linear(ax, ay, ux, uy), linear(bx, by, -ux, -uy)];
  }
  const cx = num(table.cx, segment);
  const cy = num(table.cy, segment);
  const sense = Math.sign(num(table.bulge, segment)) / num(table.radius, segment);
  return [
    linear(cx, cy, -sense * (ay - cy), sense * (ax - cx)),
    linear(cx, cy, sense * (by - cy), -sense * (bx - cx)),
  ];
}

/** Whether the nearest point of a segment's whole line or circle lies on the segment. */
export function isBeside(table: SegmentTable, segment: number, x: number, y: number): boolean {
  if (num(table.radius, segment) > 0) return isBesideArc(table, segment, x, y);
  const dx = num(table.x1, segment) - num(table.x0, segment);
  const dy = num(table.y1, segment) - num(table.y0, segment);
  const along = (x - num(table.x0, segment)) * dx + (y - num(table.y0, segment)) * dy;
  return along >= 0 && along <= dx * dx + dy * dy;
}
