import ClipperLib from 'clipper-lib';
import type { MemberRole } from '../plan';
import type { EdgeIndex } from './edge-index';
import type { Grid, GridPath, GridPoint } from './grid-polygons';

/** The designed contours, the loops that run round a punch, and those with their waste inside. */
export interface Outlines {
  readonly wanted: readonly GridPath[];
  readonly around: readonly GridPath[];
  readonly opening: readonly GridPath[];
}

export interface Deepest {
  depth: number;
  at: GridPoint | null;
}

export interface Search {
  readonly grid: Grid;
  readonly role: MemberRole;
  readonly radius: number;
  readonly contour: EdgeIndex;
  readonly path: EdgeIndex;
  readonly gouge: Deepest;
  readonly remainder: Deepest;
}

export interface Tile {
  readonly X: readonly [number, number];
  readonly Y: readonly [number, number];
}

/**
 * Deepens gouge and remainder by what lies in one tile; its surroundings belong to others. Where sweep and contour part,
 * they are farthest apart at a corner of the one or the other: a corner of the sweep is off by its distance from the
 * contour, one of the contour by how much its distance from the path differs from the radius.
 */
export function compareSwept(
  { wanted }: Outlines,
  swept: readonly GridPath[],
  tile: Tile,
  search: Search,
): void {
  const { contour, path, radius, role, gouge, remainder } = search;
  const isIn = ({ X, Y }: GridPoint): boolean =>
    X >= tile.X[0] && X <= tile.X[1] && Y >= tile.Y[0] && Y <= tile.Y[1];
  const part = (isGouge: boolean, depth: number, point: GridPoint): void =>
    deepen(isGouge ? gouge : remainder, depth, point);
  const leastDepth = (): number => Math.min(gouge.depth, remainder.depth);
  for (const point of swept.flat()) {
    if (!isIn(point)) continue;
    const off = contour.distanceBeyond(point, leastDepth());
    // A die's sweep must fill the opening; what a punch's sweep leaves standing must be the punch.
    if (off !== null) part(isInside(point, wanted) === (role === 'punch'), off, point);
  }
  for (const point of wanted.flat()) {
    if (!isIn(point)) continue;
    const beyond = path.distanceBeyond(point, radius + leastDepth());
    if (beyond !== null) part(isInside(point, swept) === (role === 'die'), beyond - radius, point);
    const within = path.distanceWithin(point, radius - gouge.depth);
    if (within !== null) deepen(gouge, radius - within, point);
  }
}

/**
 * What no distance tells: a path that crosses the contour cuts at least its radius deep, and a contour that a loop runs
 * round is cut off with the waste, however far the loop keeps from it.
 */
export function compareLoops({ wanted, around, opening }: Outlines, search: Search): void {
  const { contour, gouge, radius } = search;
  for (const loop of [...around, ...opening]) {
    loop.forEach((a, i) => {
      const at = contour.crossing(a, loop[(i + 1) % loop.length] as GridPoint);
      if (at) deepen(gouge, radius, at);
    });
  }
  for (const outline of wanted) {
    const [corner] = outline;
    if (!corner) continue;
    const isKept = around.length === 0 || around.some((loop) => isInside(corner, [loop]));
    if (!isKept || opening.some((loop) => isInside(corner, [loop])))
      deepen(gouge, halfWidth(outline), corner);
  }
}

/** Whether a point lies inside polygons, holes left out; on an edge it lies outside. */
function isInside(point: GridPoint, polygons: readonly GridPath[]): boolean {
  return (
    polygons.filter((polygon) => ClipperLib.Clipper.PointInPolygon(point, polygon) === 1).length % 2 === 1
  );
}

function halfWidth(outline: GridPath): number {
  const [x, y] = [outline.map(({ X }) => X), outline.map(({ Y }) => Y)];
  const extent = (values: readonly number[]): number =>
    values.reduce((most, value) => Math.max(most, value), -Infinity) -
    values.reduce((least, value) => Math.min(least, value), Infinity);
  return Math.min(extent(x), extent(y)) / 2;
}

function deepen(deepest: Deepest, depth: number, { X, Y }: GridPoint): void {
  if (depth <= deepest.depth || depth === Infinity) return;
  deepest.depth = depth;
  deepest.at = { X, Y };
}
