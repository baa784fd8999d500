import { arcOf } from '../../core/geometry/contour-measures';
import type { Chain, Contour, Point, Vertex } from '../../core/geometry/contour';

/** The part of Path2D that contours need; tests record it instead. */
export interface PathSink {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  arc(x: number, y: number, radius: number, start: number, end: number, counterclockwise: boolean): void;
  closePath(): void;
}

/**
 * Adds a closed contour, arcs as arcs, measured from `origin` (a path far from the drawing's zero keeps its digits,
 * since canvases work in single precision). Coordinates stay y up: whoever draws flips the canvas.
 */
export function addContour(path: PathSink, contour: Contour, origin: Point): void {
  addVertices(path, contour, true, origin);
}

/** The same for an open chain. */
export function addChain(path: PathSink, chain: Chain, origin: Point): void {
  addVertices(path, chain, false, origin);
}

/** Adds the segment from the path's present end to `to`. */
export function addSegment(path: PathSink, from: Vertex, to: Vertex, origin: Point): void {
  if (from.bulge === 0) {
    path.lineTo(to.x - origin.x, to.y - origin.y);
    return;
  }
  const { cx, cy, radius } = arcOf(from, to);
  const start = Math.atan2(from.y - cy, from.x - cx);
  const end = Math.atan2(to.y - cy, to.x - cx);
  // Canvas angles grow clockwise on a y-down canvas; on the flipped one they grow counter-clockwise as ours do, and
  // "counterclockwise" (falling angles) is then the clockwise arc.
  path.arc(cx - origin.x, cy - origin.y, radius, start, end, from.bulge < 0);
}

function addVertices(path: PathSink, vertices: readonly Vertex[], closed: boolean, origin: Point): void {
  const first = vertices[0];
  if (!first || vertices.length < 2) return;
  path.moveTo(first.x - origin.x, first.y - origin.y);
  for (let i = 0; i + 1 < vertices.length; i++) {
    addSegment(path, vertices[i] as Vertex, vertices[i + 1] as Vertex, origin);
  }
  if (!closed) return;
  const last = vertices[vertices.length - 1] as Vertex;
  if (last.bulge !== 0) addSegment(path, last, first, origin);
  path.closePath();
}
