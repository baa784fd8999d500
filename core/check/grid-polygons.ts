import type { Contour, Region, Vertex } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import * as portable from '../geometry/portable-math';

export interface GridPoint {
  X: number;
  Y: number;
}
export type GridPath = GridPoint[];

/** clipper-lib works on whole numbers: so many to the millimetre. */
export interface Grid {
  readonly perMm: number;
}

/**
 * The finest grid on which clipper-lib still computes with plain numbers: 1 nm up to 94 mm, 10 nm up to 0.9 m. Beyond
 * its limit of 47 million it goes over to big integers, ten times slower.
 */
export function gridFor(contours: Region): Grid {
  let farthest = 0;
  for (const contour of contours) {
    for (const { x, y } of contour) farthest = Math.max(farthest, Math.abs(x), Math.abs(y));
  }
  let perMm = finestPerMm;
  while (perMm > coarsestPerMm && (farthest + room) * perMm > plainNumberLimit) perMm /= 10;
  return { perMm };
}

const finestPerMm = 1e6;
const coarsestPerMm = 1e5;
const plainNumberLimit = 47_000_000;
/** An offset moves outlines outward by less than this, mm. */
const room = 1;

/**
 * A contour as a polygon on the grid, its arcs as chords no farther off than the proof's chord error. On purpose
 * written without the geometry room, so that the proof shares nothing with what it proves.
 */
export function flattenContour(contour: Contour, { perMm }: Grid): GridPath {
  const path: GridPath = [];
  const add = (x: number, y: number): void => {
    path.push({ X: Math.round(x * perMm), Y: Math.round(y * perMm) });
  };
  contour.forEach((from, i) => {
    const to = contour[(i + 1) % contour.length] as Vertex;
    add(from.x, from.y);
    if (from.bulge === 0) return;
    const angle = 4 * portable.atan(from.bulge);
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    const radius = Math.abs(chord / (2 * portable.sin(angle / 2)));
    const step = 2 * portable.acos(Math.max(0, 1 - tolerance.proofChord / radius));
    const steps = Math.max(1, Math.ceil(Math.abs(angle) / step));
    const heading = portable.atan2(to.y - from.y, to.x - from.x) - angle / 2;
    for (let k = 1; k < steps; k++) {
      // The chord to the point at `part` of the angle: 2 r sin(part / 2) long, turned by part / 2 from the tangent.
      const part = (angle * k) / steps;
      const length = 2 * radius * Math.abs(portable.sin(part / 2));
      add(
        from.x + length * portable.cos(heading + part / 2),
        from.y + length * portable.sin(heading + part / 2),
      );
    }
  });
  return path;
}

/**
 * The part of a polygon on one side of a vertical or horizontal line (Sutherland and Hodgman, 1974). A polygon that
 * falls into parts keeps them joined by edges along the line, which bound nothing. O(n).
 */
export function clipAtLine(path: GridPath, axis: 'X' | 'Y', at: number, keep: 'below' | 'above'): GridPath {
  const sign = keep === 'below' ? 1 : -1;
  const bound = sign * at;
  const across = axis === 'X' ? 'Y' : 'X';
  const clipped: GridPath = [];
  let previous = path[path.length - 1];
  let wasKept = previous !== undefined && sign * previous[axis] <= bound;
  for (const point of path) {
    const isKept = sign * point[axis] <= bound;
    if (previous && wasKept !== isKept) {
      const part = (at - previous[axis]) / (point[axis] - previous[axis]);
      const crossing = { X: at, Y: at };
      crossing[across] = Math.round(previous[across] + part * (point[across] - previous[across]));
      clipped.push(crossing);
    }
    if (isKept) clipped.push(point);
    previous = point;
    wasKept = isKept;
  }
  return clipped;
}
