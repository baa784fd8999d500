import ClipperLib from 'clipper-lib';
import type { Point, Region } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import type { Cut, MemberRole, Proof } from '../plan';
import { flattenContour, gridToMm, mmToGrid, type GridPath } from './grid-polygons';

/**
 * The independent proof of a member: clipper-lib sweeps the wire with its spark gap along every finished loop as
 * polygons and compares what that leaves with the designed contour. Nothing of our own offset takes part.
 *
 * `gouge` is how deep the sweep cuts into the member, `remainder` how deep the stock is that it leaves; both carry the
 * chord error of the polygons. Passed means that the gouge is within the proof tolerance; whether the remainder is
 * known to the findings is for the caller to compare.
 */
export function proveMember(
  designed: Region,
  role: MemberRole,
  cuts: readonly Cut[],
  cuttingRadius: number,
): Proof {
  const wanted = designed.map(flattenContour);
  const swept = sweep(cuts, cuttingRadius);
  const outside = subtract(swept, wanted);
  const inside = subtract(wanted, swept);
  // A die's sweep must fill the opening; what a punch's sweep leaves standing must be the punch.
  const [over, under] = role === 'die' ? [outside, inside] : [inside, outside];
  const gouge = deepest(over, wanted);
  const remainder = deepest(under, swept.length > 0 ? swept : wanted);
  return {
    passed: gouge.depth <= tolerance.proofGouge && cuts.length > 0,
    gouge: gouge.depth,
    gougeAt: gouge.at,
    remainder: remainder.depth,
    remainderAt: remainder.at,
    chord: tolerance.proofChord,
  };
}

/**
 * What the wire frees: a loop with its waste inside frees everything out to the kerf's far side; a loop round a punch
 * leaves everything in from it. Loops round the punch grow inwards, the others outwards.
 */
function sweep(cuts: readonly Cut[], radius: number): GridPath[] {
  const enclosing = cuts.filter(({ waste }) => waste === 'outside');
  const opening = cuts.filter(({ waste }) => waste === 'inside');
  const freed = grown(opening, radius);
  if (enclosing.length === 0) return freed;
  return subtract(grown(enclosing, -radius), freed);
}

function grown(cuts: readonly Cut[], radius: number): GridPath[] {
  const offset = new ClipperLib.ClipperOffset(2, tolerance.proofChord * mmToGrid);
  for (const { passes } of cuts) {
    const path = flattenContour(passes.at(-1)?.loop ?? []);
    if (!ClipperLib.Clipper.Orientation(path)) path.reverse();
    offset.AddPath(path, ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
  }
  const result: GridPath[] = [];
  offset.Execute(result, radius * mmToGrid);
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

/** The vertex of some polygons that lies farthest from a boundary, mm. */
function deepest(
  polygons: readonly GridPath[],
  boundary: readonly GridPath[],
): { depth: number; at: Point | null } {
  let depth = 0;
  let at: Point | null = null;
  for (const polygon of polygons) {
    for (const { X, Y } of polygon) {
      const distance = distanceToPaths(X, Y, boundary, depth * mmToGrid);
      if (distance * gridToMm <= depth) continue;
      depth = distance * gridToMm;
      at = { x: X * gridToMm, y: Y * gridToMm };
    }
  }
  return { depth, at };
}

/** Distance from a point to the nearest edge; stops early once it is no more than `enough`. */
function distanceToPaths(x: number, y: number, paths: readonly GridPath[], enough: number): number {
  let best = Infinity;
  for (const path of paths) {
    for (let i = 0; i < path.length; i++) {
      const a = path[i] as { X: number; Y: number };
      const b = path[(i + 1) % path.length] as { X: number; Y: number };
      const dx = b.X - a.X;
      const dy = b.Y - a.Y;
      const whole = dx * dx + dy * dy;
      const t = whole === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.X) * dx + (y - a.Y) * dy) / whole));
      best = Math.min(best, (a.X + t * dx - x) ** 2 + (a.Y + t * dy - y) ** 2);
      if (best <= enough * enough) return Math.sqrt(best);
    }
  }
  return Math.sqrt(best);
}
