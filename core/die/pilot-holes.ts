import type { Box, Contour, Point } from '../geometry/contour';
import { circleOf } from '../geometry/circle-of';
import { contourBox } from '../geometry/contour-measures';
import { movedContour } from '../geometry/moved-contour';
import { indexOf, nearestSegment } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import { windingAt } from '../geometry/winding';
import type { StripLayout } from './strip-layout';

/** A hole that a pilot finds, in the strip's coordinates. */
export interface PilotHole extends Point {
  readonly diameter: number;
  /** A hole of the piece, or one of its own in the scrap. */
  readonly where: 'piece' | 'scrap';
}

/**
 * Where pilots find the strip: in the two round holes of the piece that lie farthest apart along the strip, when they
 * are at least as wide as the wanted pilot; else in the scrap, where the largest disc between the blanks and the edges
 * has room for one. Empty where there is none.
 */
export function pilotHoles(
  strip: StripLayout,
  outline: Contour,
  holes: readonly Contour[],
  diameter: number,
): readonly PilotHole[] {
  const [place] = strip.places;
  if (!place) return [];
  const round = holes
    .flatMap((hole) => circleOf(movedContour(hole, place)) ?? [])
    .filter((hole) => hole.diameter >= diameter - tolerance.duplicate)
    .sort((a, b) => a.x - b.x);
  const ends = round.length > 1 ? [round[0], round.at(-1)] : round;
  const inPiece = ends.flatMap((hole) => (hole ? [{ ...hole, where: 'piece' as const }] : []));
  return inPiece.length > 0 ? inPiece : inScrap(strip, outline, diameter);
}

function inScrap(strip: StripLayout, outline: Contour, diameter: number): readonly PilotHole[] {
  const blanks = [-2, -1, 0, 1, 2].flatMap((k) =>
    strip.places.map((place) => movedContour(outline, { ...place, x: place.x + k * strip.feed })),
  );
  const index = indexOf(tableOfRegion(blanks));
  const left = contourBox(movedContour(outline, strip.places[0] ?? { turn: 0, x: 0, y: 0 })).minX;
  const cell: Box = {
    minX: left,
    maxX: left + strip.feed,
    minY: strip.bottom,
    maxY: strip.bottom + strip.width,
  };
  const room = ({ x, y }: Point): number => {
    const edge = Math.min(y - cell.minY, cell.maxY - y);
    const away = nearestSegment(index, x, y).distance;
    return Math.min(edge, windingAt(index, x, y) > 0 ? -away : away);
  };
  const best = roomiest(cell, room);
  // As much steel around it as between two blanks.
  return room(best) >= diameter / 2 + strip.bridge ? [{ ...best, diameter, where: 'scrap' }] : [];
}

/** The point of a box with most room: a grid, then steps to either side, halved where none is better. */
function roomiest(box: Box, room: (at: Point) => number): Point {
  const step = Math.min(box.maxX - box.minX, box.maxY - box.minY) / gridSteps;
  let best: Point = { x: box.minX, y: box.minY };
  let most = -Infinity;
  const look = (at: Point): boolean => {
    const own = room(at);
    if (own <= most) return false;
    most = own;
    best = at;
    return true;
  };
  for (let x = box.minX; x < box.maxX; x += step) {
    for (let y = box.minY; y < box.maxY; y += step) look({ x, y });
  }
  for (let half = step / 2, k = 0; k < halvings; half /= 2, k++) {
    const { x, y } = best;
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      look({ x: x + dx * half, y: y + dy * half });
    }
  }
  return best;
}
const gridSteps = 24;
const halvings = 20;
