import ClipperLib from 'clipper-lib';
import type { Contour, Region } from '../../core/geometry/contour';
import { eachSegment } from '../../core/geometry/contour-measures';

/** Clipper works on whole numbers: this many to the millimetre. */
const scale = 1e7;

/** Area of a region's offset by clipper-lib, arcs flattened at a chord error, mm². An independent route. */
export function clipperOffset(
  region: Region,
  distance: number,
  chord: number,
): { area: number; loops: number[] } {
  const offsetter = new ClipperLib.ClipperOffset(2, chord * scale);
  offsetter.AddPaths(
    region.map((contour) => flattened(contour, chord)),
    ClipperLib.JoinType.jtRound,
    ClipperLib.EndType.etClosedPolygon,
  );
  const solution: { X: number; Y: number }[][] = [];
  offsetter.Execute(solution, distance * scale);
  const loops = solution.map((path) => ClipperLib.Clipper.Area(path) / (scale * scale));
  return { area: loops.reduce((a, b) => a + b, 0), loops };
}

export function flattened(contour: Contour, chord: number): { X: number; Y: number }[] {
  const path: { X: number; Y: number }[] = [];
  eachSegment(contour, (from, to) => {
    const angle = 4 * Math.atan(from.bulge);
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const side = from.bulge === 0 ? 0 : (1 - from.bulge ** 2) / (4 * from.bulge);
    const cx = (from.x + to.x) / 2 - side * (to.y - from.y);
    const cy = (from.y + to.y) / 2 + side * (to.x - from.x);
    const radius = from.bulge === 0 ? 0 : (length * (1 + from.bulge ** 2)) / (4 * Math.abs(from.bulge));
    const steps =
      from.bulge === 0
        ? 1
        : Math.max(1, Math.ceil(Math.abs(angle) / (2 * Math.acos(Math.max(0, 1 - chord / radius)))));
    for (let k = 0; k < steps; k++) {
      const part = (angle * k) / steps;
      const x = k === 0 ? from.x : cx + (from.x - cx) * Math.cos(part) - (from.y - cy) * Math.sin(part);
      const y = k === 0 ? from.y : cy + (from.x - cx) * Math.sin(part) + (from.y - cy) * Math.cos(part);
      path.push({ X: Math.round(x * scale), Y: Math.round(y * scale) });
    }
  });
  return path;
}
