import type { Point, Region, Vertex } from './contour';
import { arcOf, eachSegment } from './contour-measures';
import * as portable from './portable-math';

/** Area of a region, its centroid and its second moments about axes through it. mm, mm², mm⁴. */
export interface AreaMoments {
  readonly area: number;
  readonly centroid: Point;
  /** The least second moment of any axis through the centroid, and the greatest. */
  readonly least: number;
  readonly greatest: number;
  /** Direction of the axis about which the section bends most easily (the axis of `least`), radians from +x. */
  readonly weakAxis: number;
}

/**
 * Area moments of a region (outer loops counter-clockwise, holes clockwise) by Green's theorem: its boundary integrals
 * of x²y and the like are summed over lines and arcs. On a line or an arc cut into eighth turns eight Gauss points
 * leave an error below the rounding. Null where there is no area. Check: rectangle b·h³/12, circle π·r⁴/4.
 */
export function areaMoments(region: Region): AreaMoments | null {
  const origin = region[0]?.[0];
  if (!origin) return null;
  const sums = { area: 0, x: 0, y: 0, xx: 0, yy: 0, xy: 0 };
  for (const contour of region) {
    eachSegment(contour, (from, to) => addSegment(sums, from, to, origin));
  }
  const { area } = sums;
  if (!(area > 0)) return null;
  const cx = sums.x / area;
  const cy = sums.y / area;
  // About the centroid: Steiner's rule.
  const ixx = sums.yy - area * cy * cy;
  const iyy = sums.xx - area * cx * cx;
  const ixy = sums.xy - area * cx * cy;
  const mean = (ixx + iyy) / 2;
  const radius = Math.hypot((ixx - iyy) / 2, ixy);
  // Moment about an axis at angle a: mean + (ixx − iyy)/2·cos 2a − ixy·sin 2a; least where that points against.
  const weakAxis = portable.atan2(ixy, -(ixx - iyy) / 2) / 2;
  return {
    area,
    centroid: { x: origin.x + cx, y: origin.y + cy },
    least: mean - radius,
    greatest: mean + radius,
    weakAxis,
  };
}

interface Sums {
  area: number;
  x: number;
  y: number;
  xx: number;
  yy: number;
  xy: number;
}

/** ∮ along the segment of the forms whose curl is 1, x, y, x², y², xy; dx and dy shared alike. */
function addSegment(sums: Sums, from: Vertex, to: Vertex, origin: Point): void {
  const at = pathOf(from, to, origin);
  const parts = from.bulge === 0 ? 1 : Math.ceil((4 * portable.atan(Math.abs(from.bulge))) / (Math.PI / 4));
  for (let part = 0; part < parts; part++) {
    for (const [node, weight] of gauss) {
      const { x, y, dx, dy } = at((part + (1 + node) / 2) / parts);
      const share = weight / (2 * parts);
      sums.area += (share * (x * dy - y * dx)) / 2;
      sums.x += (share * (x * x * dy - 2 * x * y * dx)) / 4;
      sums.y += (share * (2 * x * y * dy - y * y * dx)) / 4;
      sums.xx += (share * (x * x * x * dy - 3 * x * x * y * dx)) / 6;
      sums.yy += (share * (3 * x * y * y * dy - y * y * y * dx)) / 6;
      sums.xy += (share * (x * x * y * dy - x * y * y * dx)) / 4;
    }
  }
}

/** Point and derivative along a segment, 0 to 1, relative to the origin. */
function pathOf(from: Vertex, to: Vertex, origin: Point) {
  if (from.bulge === 0) {
    const dx = to.x - from.x;
    const dy = to.y - from.y;
    return (t: number) => ({ x: from.x - origin.x + t * dx, y: from.y - origin.y + t * dy, dx, dy });
  }
  const { cx, cy } = arcOf(from, to);
  const turn = 4 * portable.atan(from.bulge);
  const rx = from.x - cx;
  const ry = from.y - cy;
  return (t: number) => {
    const cos = portable.cos(turn * t);
    const sin = portable.sin(turn * t);
    const x = rx * cos - ry * sin;
    const y = rx * sin + ry * cos;
    return { x: cx - origin.x + x, y: cy - origin.y + y, dx: -y * turn, dy: x * turn };
  };
}

/** Gauss–Legendre nodes and weights on −1 to 1, eight points (Abramowitz & Stegun, table 25.4). */
const gauss: readonly (readonly [node: number, weight: number])[] = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
].flatMap(([node, weight]) => [
  [node, weight] as [number, number],
  [-(node as number), weight] as [number, number],
]);
