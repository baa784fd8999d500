import type { Contour, Vertex } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';

/** clipper-lib works on whole numbers: a grid of 1 nm, two hundred times finer than the proof's tolerance. */
export const mmToGrid = 1e6;
export const gridToMm = 1 / mmToGrid;

export interface GridPoint {
  X: number;
  Y: number;
}
export type GridPath = GridPoint[];

/**
 * A contour as a polygon on the grid, its arcs as chords no farther off than the proof's chord error. On purpose
 * written without the geometry room, so that the proof shares nothing with what it proves.
 */
export function flattenContour(contour: Contour): GridPath {
  const path: GridPath = [];
  contour.forEach((from, i) => {
    const to = contour[(i + 1) % contour.length] as Vertex;
    path.push(onGrid(from.x, from.y));
    if (from.bulge === 0) return;
    const angle = 4 * Math.atan(from.bulge);
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    const radius = Math.abs(chord / (2 * Math.sin(angle / 2)));
    const step = 2 * Math.acos(Math.max(0, 1 - tolerance.proofChord / radius));
    const steps = Math.max(1, Math.ceil(Math.abs(angle) / step));
    for (let k = 1; k < steps; k++) {
      // Chord from the start to the point at part · angle: length 2 r sin(part/2), turned by part/2 from the tangent.
      const part = (angle * k) / steps;
      const heading = Math.atan2(to.y - from.y, to.x - from.x) - angle / 2 + part / 2;
      const length = 2 * radius * Math.abs(Math.sin(part / 2));
      path.push(onGrid(from.x + length * Math.cos(heading), from.y + length * Math.sin(heading)));
    }
  });
  return path;
}

const onGrid = (x: number, y: number): GridPoint => ({
  X: Math.round(x * mmToGrid),
  Y: Math.round(y * mmToGrid),
});
