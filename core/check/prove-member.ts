import ClipperLib from 'clipper-lib';
import type { Contour, Point, Region } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import type { Cut, MemberRole, Proof } from '../plan';
import { allowedGouge } from './allowed-gouge';
import { compareLoops, compareSwept, type Outlines, type Search, type Tile } from './compare-swept';
import { EdgeIndex } from './edge-index';
import {
  clipAtLine,
  flattenContour,
  gridFor,
  type Grid,
  type GridPath,
  type GridPoint,
} from './grid-polygons';

/**
 * The independent proof of a member: clipper-lib sweeps the wire with its spark gap along every finished loop as
 * polygons, and what that leaves is compared with the designed contour. Nothing of our own offset takes part.
 *
 * `gouge` is how deep the sweep cuts into the member, `remainder` how deep the stock is that it leaves; both carry the
 * chord error of the polygons. Passed means that the gouge is no deeper than `allowed`; whether the remainder is
 * known to the findings is for the caller to compare.
 *
 * The plane is halved until few edges are in a tile, and each tile is swept with the edges within a kerf of it: a
 * disc of the wire reaches no farther, and clipper-lib takes more than twice the time for twice the edges.
 */
export function proveMember(
  designed: Region,
  role: MemberRole,
  finished: readonly FinishedLoop[],
  cuttingRadius: number,
  /** Last decimal of the program that the loops were read from; 0 where they are exact. */
  lastDecimal = 0,
): Proof {
  const grid = gridFor([...designed, ...finished.map(({ loop }) => loop)]);
  const wanted = designed.map((contour) => flattenContour(contour, grid));
  const loops = (waste: Cut['waste']) =>
    finished
      .filter((cut) => cut.waste === waste)
      .map(({ loop }) => counterClockwise(flattenContour(loop, grid)));
  const whole: Outlines = { wanted, around: loops('outside'), opening: loops('inside') };
  const search: Search = {
    grid,
    role,
    radius: cuttingRadius * grid.perMm,
    contour: new EdgeIndex(wanted),
    path: new EdgeIndex([...whole.around, ...whole.opening]),
    gouge: { depth: 0, at: null },
    remainder: { depth: 0, at: null },
  };
  proveTile(whole, boxAround(whole, roomOf(search)), search);
  compareLoops(whole, search);
  const { gouge, remainder } = search;
  const allowed = allowedGouge(lastDecimal);
  return {
    passed: gouge.depth <= allowed * grid.perMm && finished.length > 0,
    gouge: gouge.depth / grid.perMm,
    gougeAt: toMm(gouge.at, grid),
    remainder: remainder.depth / grid.perMm,
    remainderAt: toMm(remainder.at, grid),
    chord: tolerance.proofChord,
    allowed,
  };
}

/** The closed path of a finishing pass, and where its waste lies. */
export interface FinishedLoop {
  readonly waste: Cut['waste'];
  readonly loop: Contour;
}

/** Edges in a tile up to which it is proved in one go. */
const fewEdges = 500;

function proveTile(outlines: Outlines, tile: Tile, search: Search): void {
  const axis = tile.X[1] - tile.X[0] > tile.Y[1] - tile.Y[0] ? 'X' : 'Y';
  const room = roomOf(search);
  // Halving a tile no larger than its surroundings would leave both halves with all the edges.
  if (edgeCount(outlines) <= fewEdges || tile[axis][1] - tile[axis][0] <= 4 * room) {
    compareSwept(outlines, swept(outlines, search), tile, search);
    return;
  }
  const middle = Math.round((tile[axis][0] + tile[axis][1]) / 2);
  const half = (keep: 'below' | 'above'): Outlines => {
    const at = Math.round(keep === 'below' ? middle + room : middle - room);
    const clip = (paths: readonly GridPath[]) =>
      paths.map((path) => clipAtLine(path, axis, at, keep)).filter((path) => path.length > 2);
    return { wanted: clip(outlines.wanted), around: clip(outlines.around), opening: clip(outlines.opening) };
  };
  proveTile(half('below'), { ...tile, [axis]: [tile[axis][0], middle] }, search);
  proveTile(half('above'), { ...tile, [axis]: [middle, tile[axis][1]] }, search);
}

/** What the wire leaves: of an opening what it clears, of a punch what stays within its loop and outside its pockets. */
function swept({ around, opening }: Outlines, search: Search): readonly GridPath[] {
  const freed = opening.length === 0 ? [] : grown(opening, search.radius, search);
  if (around.length === 0) return freed;
  const kept = grown(around, -search.radius, search);
  return freed.length === 0 ? kept : subtract(kept, freed);
}

function grown(loops: readonly GridPath[], distance: number, { grid }: Search): GridPath[] {
  const offset = new ClipperLib.ClipperOffset(2, tolerance.proofChord * grid.perMm);
  for (const loop of loops) {
    offset.AddPath(loop, ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
  }
  const result: GridPath[] = [];
  offset.Execute(result, distance);
  return result;
}

function subtract(subject: readonly GridPath[], clip: readonly GridPath[]): GridPath[] {
  const clipper = new ClipperLib.Clipper();
  clipper.AddPaths([...subject], ClipperLib.PolyType.ptSubject, true);
  clipper.AddPaths([...clip], ClipperLib.PolyType.ptClip, true);
  const result: GridPath[] = [];
  const fill = ClipperLib.PolyFillType.pftNonZero;
  clipper.Execute(ClipperLib.ClipType.ctDifference, result, fill, fill);
  return result;
}

function counterClockwise(path: GridPath): GridPath {
  return ClipperLib.Clipper.Orientation(path) ? path : path.reverse();
}

const edgeCount = ({ wanted, around, opening }: Outlines): number =>
  [...wanted, ...around, ...opening].reduce((sum, path) => sum + path.length, 0);

/** How far what is swept and compared reaches beyond an outline, grid units: the disc's width and a little. */
const roomOf = ({ radius, grid }: Search): number => 2 * radius + grid.perMm / 100;

/** The box of all outlines and of what the wire can reach from them. */
function boxAround({ wanted, around, opening }: Outlines, room: number): Tile {
  const box = { X: [Infinity, -Infinity] as [number, number], Y: [Infinity, -Infinity] as [number, number] };
  for (const path of [...wanted, ...around, ...opening]) {
    for (const point of path) {
      for (const axis of ['X', 'Y'] as const) {
        box[axis][0] = Math.min(box[axis][0], point[axis] - room);
        box[axis][1] = Math.max(box[axis][1], point[axis] + room);
      }
    }
  }
  return box;
}

const toMm = (point: GridPoint | null, { perMm }: Grid): Point | null =>
  point && { x: point.X / perMm, y: point.Y / perMm };
