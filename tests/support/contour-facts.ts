import type { Contour, Region, Vertex } from '../../core/geometry/contour';
import { contourArea, contourLength, reversedContour } from '../../core/geometry/contour-measures';

export const regionArea = (region: Region): number =>
  region.reduce((sum, contour) => sum + contourArea(contour), 0);
export const regionLength = (region: Region): number =>
  region.reduce((sum, contour) => sum + contourLength(contour), 0);

/** The same contour started elsewhere, turned by quarters, mirrored: what is true of one is true of all. */
export function variants(contour: Contour): readonly Contour[] {
  const started = (k: number): Contour => [...contour.slice(k), ...contour.slice(0, k)];
  const turned = (c: Contour): Contour => c.map(({ x, y, bulge }) => ({ x: -y, y: x, bulge }));
  const mirrored: Contour = reversedContour(contour.map(({ x, y, bulge }) => ({ x: -x, y, bulge: -bulge })));
  const moved = (c: Contour, dx: number, dy: number): Contour =>
    c.map((v) => ({ ...v, x: v.x + dx, y: v.y + dy }));
  return [
    contour,
    started(1),
    started(contour.length - 1),
    turned(contour),
    turned(turned(contour)),
    mirrored,
    moved(contour, 300, -70),
  ];
}

/** Points all along a contour, ends and arcs included: `parts` to a segment. */
export function pointsAlong(contour: Contour, parts: number): { x: number; y: number }[] {
  return contour.flatMap((from, i) => {
    const to = contour[(i + 1) % contour.length] as Vertex;
    return Array.from({ length: parts }, (_, k) => pointOn(from, to, k / parts));
  });
}

function pointOn(from: Vertex, to: Vertex, fraction: number): { x: number; y: number } {
  if (from.bulge === 0) {
    return { x: from.x + (to.x - from.x) * fraction, y: from.y + (to.y - from.y) * fraction };
  }
  const side = (1 - from.bulge ** 2) / (4 * from.bulge);
  const cx = (from.x + to.x) / 2 - side * (to.y - from.y);
  const cy = (from.y + to.y) / 2 + side * (to.x - from.x);
  const turn = 4 * Math.atan(from.bulge) * fraction;
  const [x, y] = [from.x - cx, from.y - cy];
  return { x: cx + x * Math.cos(turn) - y * Math.sin(turn), y: cy + x * Math.sin(turn) + y * Math.cos(turn) };
}

/** Distance from a point to a contour by brute force: every segment, nothing shared with the geometry under test. */
export function bruteDistance(region: Region, x: number, y: number): number {
  let best = Infinity;
  for (const contour of region) {
    contour.forEach((from, i) => {
      const to = contour[(i + 1) % contour.length] as Vertex;
      best = Math.min(best, segmentDistance(from, to, x, y));
    });
  }
  return best;
}

function segmentDistance(from: Vertex, to: Vertex, x: number, y: number): number {
  const ends = Math.min(Math.hypot(x - from.x, y - from.y), Math.hypot(x - to.x, y - to.y));
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  if (from.bulge === 0) {
    const t = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy);
    return t > 0 && t < 1 ? Math.abs((x - from.x) * dy - (y - from.y) * dx) / Math.hypot(dx, dy) : ends;
  }
  const side = (1 - from.bulge ** 2) / (4 * from.bulge);
  const cx = (from.x + to.x) / 2 - side * dy;
  const cy = (from.y + to.y) / 2 + side * dx;
  const radius = Math.hypot(from.x - cx, from.y - cy);
  const sweep = 4 * Math.atan(from.bulge);
  const start = Math.atan2(from.y - cy, from.x - cx);
  let angle = (Math.atan2(y - cy, x - cx) - start) * Math.sign(sweep);
  angle = ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  return angle <= Math.abs(sweep) ? Math.min(ends, Math.abs(Math.hypot(x - cx, y - cy) - radius)) : ends;
}
