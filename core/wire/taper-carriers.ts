import type { Point, Vertex } from '../geometry/contour';
import { arcOf } from '../geometry/contour-measures';

/** The line or circle that a segment lies on, with its sense. */
export type Carrier =
  | { readonly kind: 'line'; readonly at: Point; readonly direction: Point }
  | {
      readonly kind: 'circle';
      readonly centre: Point;
      readonly radius: number;
      /** 1 counter-clockwise, −1 clockwise. */
      readonly sense: 1 | -1;
    };

export function carrierOf(from: Vertex, to: Vertex): Carrier {
  if (from.bulge === 0) {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const direction = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
    return { kind: 'line', at: { x: from.x, y: from.y }, direction };
  }
  const { cx, cy, radius } = arcOf(from, to);
  return { kind: 'circle', centre: { x: cx, y: cy }, radius, sense: from.bulge > 0 ? 1 : -1 };
}

/** The carrier moved to the right of travel; null where a circle would turn inside out. mm. */
export function parallelCarrier(carrier: Carrier, distance: number): Carrier | null {
  if (carrier.kind === 'line') {
    const { at, direction } = carrier;
    return { ...carrier, at: { x: at.x + direction.y * distance, y: at.y - direction.x * distance } };
  }
  const radius = carrier.radius + carrier.sense * distance;
  return radius > 0 ? { ...carrier, radius } : null;
}

/** The point of a carrier nearest to a point. */
export function footOn(carrier: Carrier, { x, y }: Point): Point {
  if (carrier.kind === 'line') {
    const { at, direction } = carrier;
    const along = (x - at.x) * direction.x + (y - at.y) * direction.y;
    return { x: at.x + along * direction.x, y: at.y + along * direction.y };
  }
  const { centre, radius } = carrier;
  const length = Math.hypot(x - centre.x, y - centre.y);
  return {
    x: centre.x + ((x - centre.x) / length) * radius,
    y: centre.y + ((y - centre.y) / length) * radius,
  };
}

/** Where two carriers meet, of two places the one nearer to a point; null where they don't. */
export function meetingOf(a: Carrier, b: Carrier, near: Point): Point | null {
  const places = meetings(a, b);
  const away = ({ x, y }: Point): number => Math.hypot(x - near.x, y - near.y);
  return places.reduce<Point | null>((best, one) => (best && away(best) <= away(one) ? best : one), null);
}

function meetings(a: Carrier, b: Carrier): readonly Point[] {
  if (a.kind === 'line' && b.kind === 'line') {
    const cross = a.direction.x * b.direction.y - a.direction.y * b.direction.x;
    if (cross === 0) return [];
    const along = ((b.at.x - a.at.x) * b.direction.y - (b.at.y - a.at.y) * b.direction.x) / cross;
    return [{ x: a.at.x + along * a.direction.x, y: a.at.y + along * a.direction.y }];
  }
  if (a.kind === 'line') return b.kind === 'circle' ? lineAndCircle(a, b) : [];
  if (b.kind === 'line') return lineAndCircle(b, a);
  return twoCircles(a, b);
}

type Line = Extract<Carrier, { kind: 'line' }>;
type Circle = Extract<Carrier, { kind: 'circle' }>;

function lineAndCircle(line: Line, { centre, radius }: Circle): readonly Point[] {
  const foot = footOn(line, centre);
  const off = Math.hypot(foot.x - centre.x, foot.y - centre.y);
  if (off > radius) return [];
  const half = Math.sqrt((radius - off) * (radius + off));
  return [-half, half].map((along) => ({
    x: foot.x + along * line.direction.x,
    y: foot.y + along * line.direction.y,
  }));
}

function twoCircles(a: Circle, b: Circle): readonly Point[] {
  const dx = b.centre.x - a.centre.x;
  const dy = b.centre.y - a.centre.y;
  const apart = Math.hypot(dx, dy);
  if (apart === 0 || apart > a.radius + b.radius || apart < Math.abs(a.radius - b.radius)) return [];
  const along = (apart * apart + (a.radius - b.radius) * (a.radius + b.radius)) / (2 * apart);
  const half = Math.sqrt(Math.max(0, a.radius * a.radius - along * along));
  return [-half, half].map((side) => ({
    x: a.centre.x + (along * dx - side * dy) / apart,
    y: a.centre.y + (along * dy + side * dx) / apart,
  }));
}
