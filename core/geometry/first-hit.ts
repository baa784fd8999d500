import type { Point } from './contour';
import { meetCircle, root } from './meet-circle';
import type { BoundaryPlace } from './nearest-point';
import type { SegmentIndex } from './segment-index';
import { alongSegment } from './along-segment';
import { isBesideArc, num, type SegmentTable } from './segment-table';
import { tolerance } from './tolerance';

/**
 * The first place where a ray meets the boundary, at least `beyond` mm from its start (0: a start on the boundary is a hit
 * itself); null where it meets nothing. `way` may have any length. A ray along a line hits its nearer end; one through a
 * corner hits the corner, so that none slips out between two segments. Exact on lines and arcs.
 *
 * Idea: the ray is followed in stretches of a fixed part of the whole, so that each search of the index is a small box.
 */
export function firstHit(index: SegmentIndex, from: Point, way: Point, beyond = 0): BoundaryPlace | null {
  const { table, tree } = index;
  const length = Math.hypot(way.x, way.y);
  if (!tree || length === 0) return null;
  const ray: Ray = { x: from.x, y: from.y, ux: way.x / length, uy: way.y / length, beyond };
  const [enter, leave] = stretchInside(ray, tree);
  const step = Math.max(tree.maxX - tree.minX, tree.maxY - tree.minY) / stretches + tolerance.samePoint;
  for (let near = Math.max(beyond, enter); near <= leave; near += step) {
    const far = near + step;
    const [x0, x1] = [ray.x + near * ray.ux, ray.x + far * ray.ux];
    const [y0, y1] = [ray.y + near * ray.uy, ray.y + far * ray.uy];
    const room = tolerance.samePoint;
    let best: { segment: number; distance: number } | null = null;
    const look = (segment: number): boolean => {
      const distance = hitOn(table, segment, ray);
      if (distance < (best?.distance ?? Infinity)) best = { segment, distance };
      return false;
    };
    tree.search(
      Math.min(x0, x1) - room,
      Math.min(y0, y1) - room,
      Math.max(x0, x1) + room,
      Math.max(y0, y1) + room,
      look,
    );
    const found = best as { segment: number; distance: number } | null;
    if (found && found.distance <= far) return placeOf(table, ray, found.segment, found.distance);
  }
  return null;
}

const stretches = 64;

interface Ray {
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
  readonly beyond: number;
}

/** From where to where along a ray it may be inside a box, the same-point tolerance wider; from after to where it never is. */
function stretchInside(
  { x, y, ux, uy }: Ray,
  box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number },
): readonly [number, number] {
  let enter = 0;
  let leave = Infinity;
  for (const [at, speed, low, high] of [
    [x, ux, box.minX, box.maxX],
    [y, uy, box.minY, box.maxY],
  ] as const) {
    const room = tolerance.samePoint;
    if (speed === 0) {
      if (at < low - room || at > high + room) return [1, 0];
      continue;
    }
    const [a, b] = [(low - room - at) / speed, (high + room - at) / speed];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return [enter, leave];
}

/** How far along the ray it first meets a segment, mm; Infinity where it does not. */
function hitOn(table: SegmentTable, i: number, ray: Ray): number {
  const radius = num(table.radius, i);
  const inside = radius === 0 ? hitOnLine(table, i, ray) : hitOnArc(table, i, ray);
  const start = hitOnPoint(num(table.x0, i), num(table.y0, i), ray);
  const end = hitOnPoint(num(table.x1, i), num(table.y1, i), ray);
  return Math.min(inside, start, end);
}

function hitOnPoint(x: number, y: number, ray: Ray): number {
  const [dx, dy] = [x - ray.x, y - ray.y];
  const along = dx * ray.ux + dy * ray.uy;
  return along >= ray.beyond && Math.abs(dx * ray.uy - dy * ray.ux) <= tolerance.samePoint ? along : Infinity;
}

function hitOnLine(table: SegmentTable, i: number, ray: Ray): number {
  const [fromX, fromY] = [num(table.x0, i) - ray.x, num(table.y0, i) - ray.y];
  const dx = num(table.x1, i) - num(table.x0, i);
  const dy = num(table.y1, i) - num(table.y0, i);
  const cross = ray.ux * dy - ray.uy * dx;
  // Along the line: its ends are what is hit.
  if (cross === 0) return Infinity;
  const share = (fromX * ray.uy - fromY * ray.ux) / cross;
  if (!(share >= 0 && share <= 1)) return Infinity;
  const along = (fromX * dy - fromY * dx) / cross;
  return along >= ray.beyond ? along : Infinity;
}

function hitOnArc(table: SegmentTable, i: number, ray: Ray): number {
  const { x, y, ux, uy } = ray;
  const count = meetCircle(table, i, x - num(table.x0, i), y - num(table.y0, i), ux, uy, 1);
  let nearest = Infinity;
  for (let k = 0; k < count; k++) {
    const along = num(root, k);
    if (along < ray.beyond || along >= nearest) continue;
    if (isBesideArc(table, i, x + along * ux, y + along * uy)) nearest = along;
  }
  return nearest;
}

function placeOf(table: SegmentTable, ray: Ray, segment: number, distance: number): BoundaryPlace {
  const x = ray.x + distance * ray.ux;
  const y = ray.y + distance * ray.uy;
  const along = Math.min(1, Math.max(0, alongSegment(table, segment, x, y)));
  return { segment, along, x, y, distance };
}
