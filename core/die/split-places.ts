import type { Contour, Point, Vertex } from '../geometry/contour';
import { arcOf, segmentLength } from '../geometry/contour-measures';
import { directionOf, pointAt, type LoopPosition } from '../geometry/loop-position';
import * as portable from '../geometry/portable-math';

/** A place of a contour through which a section can be split, and the ways a split may leave it into the steel. */
export interface SplitPlace {
  readonly kind: 'corner' | 'radius' | 'added';
  readonly position: LoopPosition;
  readonly at: Point;
  /** Unit directions into the steel, best first. */
  readonly directions: readonly Point[];
  /** Radius of the fillet there, mm; 0 for a sharp corner. */
  readonly radius: number;
}

/** On which side of a counter-clockwise contour the steel lies: outside a die opening, inside a punch. */
export type SteelSide = 'outside' | 'inside';

/**
 * The inside corners of the steel that are tighter than `reach`: sharp ones, and fillets of a smaller radius. A sharp
 * corner is best split along the extension of an edge, so that one section is ground straight through and the other
 * has an outside corner; a fillet along its bisector, so that neither section runs out into a thin edge.
 */
export function splitPlaces(contour: Contour, steel: SteelSide, reach: number): readonly SplitPlace[] {
  const sign = steel === 'outside' ? 1 : -1;
  const places: SplitPlace[] = [];
  contour.forEach((from, segment) => {
    const before = (segment + contour.length - 1) % contour.length;
    const arriving = directionOf(contour, { segment: before, along: 1 });
    const leaving = directionOf(contour, { segment, along: 0 });
    const turn = portable.atan2(
      arriving.x * leaving.y - arriving.y * leaving.x,
      arriving.x * leaving.x + arriving.y * leaving.y,
    );
    if (sign * turn > cornerTurn) places.push(cornerPlace(from, segment, arriving, leaving));
    const to = contour[(segment + 1) % contour.length] as Vertex;
    if (sign * from.bulge > 0 && arcOf(from, to).radius < reach && segmentLength(from, to) > 0) {
      places.push(filletPlace(contour, segment, sign, arcOf(from, to).radius));
    }
  });
  return places;
}

/** A bend of less than this (radians) is smooth: a twentieth of a degree is a drawing's rounding. */
const cornerTurn = 0.001;

function cornerPlace(at: Vertex, segment: number, arriving: Point, leaving: Point): SplitPlace {
  return {
    kind: 'corner',
    position: { segment, along: 0 },
    at: { x: at.x, y: at.y },
    directions: [
      arriving,
      { x: -leaving.x, y: -leaving.y },
      unit({ x: arriving.x - leaving.x, y: arriving.y - leaving.y }),
    ],
    radius: 0,
  };
}

function filletPlace(contour: Contour, segment: number, sign: number, radius: number): SplitPlace {
  return { ...placeSquareOn(contour, { segment, along: 0.5 }, sign), kind: 'radius', radius };
}

/** A split square on the contour, into the steel: right of travel for a die opening, left for a punch. */
function placeSquareOn(contour: Contour, position: LoopPosition, sign: number): SplitPlace {
  const along = directionOf(contour, position);
  return {
    kind: 'added',
    position,
    at: pointAt(contour, position),
    directions: [{ x: sign * along.y, y: -sign * along.x }],
    radius: 0,
  };
}

/**
 * Further places for a split where one alone would not part the block: the middles of the straights, the one farthest
 * from the given place first.
 */
export function addedPlaces(contour: Contour, steel: SteelSide, away: Point): readonly SplitPlace[] {
  const sign = steel === 'outside' ? 1 : -1;
  return contour
    .map((_, segment) => placeSquareOn(contour, { segment, along: 0.5 }, sign))
    .sort((a, b) => apart(b.at, away) - apart(a.at, away));
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

function unit({ x, y }: Point): Point {
  const length = Math.hypot(x, y);
  return { x: x / length, y: y / length };
}
