import ClipperLib from 'clipper-lib';
import type { Contour, Region } from '../../core/geometry/contour';
import { eachSegment } from '../../core/geometry/contour-measures';

/** Clipper works on whole numbers: this many to the millimetre. More than 2e6 would take 128-bit products for 20 mm, six times slower. */
export const clipperScale = 2e6;

export type ClipperPath = { X: number; Y: number }[];

/** A region's offset by clipper-lib, arcs flattened at a chord error, in clipper's whole numbers. An independent route. */
export function clipperOffset(region: Region, distance: number, chord: number): ClipperPath[] {
  const offsetter = new ClipperLib.ClipperOffset(2, chord * clipperScale);
  offsetter.AddPaths(
    region.map((contour) => flattened(contour, chord)),
    ClipperLib.JoinType.jtRound,
    ClipperLib.EndType.etClosedPolygon,
  );
  const solution: ClipperPath[] = [];
  offsetter.Execute(solution, distance * clipperScale);
  return solution;
}

/** Signed area of a clipper path, mm². */
export function clipperArea(path: ClipperPath): number {
  return ClipperLib.Clipper.Area(path) / clipperScale ** 2;
}

/** What a disc of the radius sweeps inside a region (shrunk, then grown again) by clipper-lib. */
export function clipperOpened(region: Region, radius: number, chord: number): ClipperPath[] {
  let paths = region.map((contour) => flattened(contour, chord));
  for (const distance of [-radius, radius]) {
    const offsetter = new ClipperLib.ClipperOffset(2, chord * clipperScale);
    offsetter.AddPaths(paths, ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
    const moved: ClipperPath[] = [];
    offsetter.Execute(moved, distance * clipperScale);
    paths = moved;
  }
  return paths;
}

/** A region's contours as clipper's polygons. */
export function flattened(contour: Contour, chord: number): ClipperPath {
  const path: ClipperPath = [];
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
      path.push({ X: Math.round(x * clipperScale), Y: Math.round(y * clipperScale) });
    }
  });
  return path;
}
