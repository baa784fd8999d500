import { combineRegions } from '../geometry/combine-regions';
import type { Contour, Point, Region, Vertex } from '../geometry/contour';
import { arcOf, contourArea, contourBox, eachSegment, segmentLength } from '../geometry/contour-measures';
import { cornerTurn, segmentMiddle, turnBetween } from '../geometry/segment-turn';
import { indexOf, nearestSegment, type SegmentIndex } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import type { MemberRole } from '../plan';
import * as portable from '../geometry/portable-math';

/** A place of a contour that a disc on the member's free side does not reach. */
export interface UnreachedPlace {
  /** Closed outline of what lies between the contour and the disc's nearest sweep. */
  readonly outline: Contour;
  readonly shape: Shape;
  /** Greatest distance of the contour from the sweep, mm, and where. */
  readonly depth: number;
  readonly deepestAt: Point;
  readonly area: number;
}

/** What the contour looks like there: a sharp corner of an inside angle, a radius below the disc's, or anything narrower. */
export type Shape =
  | { readonly kind: 'corner'; readonly angle: number; readonly at: Point }
  | { readonly kind: 'radius'; readonly radius: number; readonly at: Point }
  | { readonly kind: 'slot'; readonly at: Point };

/**
 * All places of a contour that a disc of `radius` does not reach from the free side (inside a die opening, outside a
 * punch), where `reached` is what it does sweep out. Places thinner than the remainder tolerance are none.
 */
export function unreachedPlaces(
  designed: Region,
  reached: Region,
  role: MemberRole,
  radius: number,
): readonly UnreachedPlace[] {
  const left =
    role === 'die'
      ? combineRegions(designed, reached, 'difference')
      : combineRegions(reached, designed, 'difference');
  const reachedIndex = indexOf(tableOfRegion(reached));
  const designedIndex = indexOf(tableOfRegion(designed));
  return left.flatMap((outline) => {
    const area = contourArea(outline);
    const { depth, at } = deepestPoint(outline, reachedIndex);
    if (area <= 0 || depth < tolerance.remainder) return [];
    return [
      { outline, shape: shapeAlong(outline, designedIndex, radius, depth), depth, deepestAt: at, area },
    ];
  });
}

/** What the designed contour looks like along a remainder. */
function shapeAlong(outline: Contour, designed: SegmentIndex, reach: number, depth: number): Shape {
  const own: { from: Vertex; to: Vertex; index: number }[] = [];
  eachSegment(outline, (from, to, index) => {
    if (segmentLength(from, to) <= tolerance.sameBoundary) return;
    const middle = segmentMiddle(from, to);
    if (nearestSegment(designed, middle.x, middle.y, tolerance.sameBoundary).segment >= 0)
      own.push({ from, to, index });
  });
  const arcs = own.filter(({ from, to }) => from.bulge !== 0 && arcOf(from, to).radius < reach);
  const corners = own.flatMap(({ from, to }, k) => {
    const next = own[(k + 1) % own.length];
    if (!next || next.from !== to) return [];
    const turn = turnBetween(from, to, next.to);
    return Math.abs(turn) > cornerTurn ? [{ at: to, turn }] : [];
  });
  const [corner] = corners;
  const [arc] = arcs;
  if (corner && corners.length === 1 && arcs.length === 0) {
    return { kind: 'corner', angle: Math.PI - Math.abs(corner.turn), at: corner.at };
  }
  const smallest = arcs.reduce((least, { from, to }) => Math.min(least, arcOf(from, to).radius), Infinity);
  if (arc && corners.length === 0 && depth < reach && own.length <= arcs.length + 2 && !turnsBack(arcs)) {
    return { kind: 'radius', radius: smallest, at: segmentMiddle(arc.from, arc.to) };
  }
  return { kind: 'slot', at: middleOfBox(outline) };
}

/** Arcs that together turn by more than about a half turn close a slot, however short: a round-ended slot. */
function turnsBack(arcs: readonly { from: Vertex }[]): boolean {
  const turn = arcs.reduce((sum, { from }) => sum + 4 * portable.atan(from.bulge), 0);
  return Math.abs(turn) > 0.95 * Math.PI;
}

function deepestPoint(outline: Contour, asCut: SegmentIndex): { depth: number; at: Point } {
  let depth = 0;
  let at: Point = outline[0] as Vertex;
  eachSegment(outline, (from, to) => {
    for (const point of [from, segmentMiddle(from, to)]) {
      // Nothing as cut: the whole depth of the remainder is not a number; its extent stands for it.
      const { segment, distance } = nearestSegment(asCut, point.x, point.y);
      if (segment < 0 || distance <= depth) continue;
      depth = distance;
      at = point;
    }
  });
  return asCut.table.count === 0 ? { depth: extent(outline), at } : { depth, at };
}

function middleOfBox(outline: Contour): Point {
  const box = contourBox(outline);
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
}

/** The longer side of an outline's box, mm. */
export function extent(outline: Contour): number {
  const box = contourBox(outline);
  return Math.max(box.maxX - box.minX, box.maxY - box.minY);
}
