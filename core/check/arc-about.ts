import type { Point } from '../geometry/contour';
import * as portable from '../geometry/portable-math';

/** The arc of a block, in any unit: its centre, and the angle it sweeps, positive counter-clockwise. */
export interface Arc {
  readonly centre: Point;
  readonly turn: number;
}

/** An arc by I and J, from its start to its centre; a full turn where it ends where it starts (ISO 6983-1). */
export function arcAboutCentre(from: Point, to: Point, toCentre: Point, counterClockwise: boolean): Arc {
  const centre = { x: from.x + toCentre.x, y: from.y + toCentre.y };
  return { centre, turn: turnAbout(centre, from, to, counterClockwise) };
}

/**
 * An arc by its radius (a dialect's R): at most a half turn for a positive one, more for a negative one. Null where
 * the ends are farther apart than the arc is wide, by more than `slack`, or coincide.
 */
export function arcOfRadius(
  from: Point,
  to: Point,
  radius: number,
  counterClockwise: boolean,
  slack: number,
): Arc | null {
  const chord = { x: to.x - from.x, y: to.y - from.y };
  const length = Math.hypot(chord.x, chord.y);
  const size = Math.abs(radius);
  if (length === 0 || size === 0 || length / 2 > size + slack) return null;
  const lift = Math.sqrt(Math.max(0, size * size - (length * length) / 4)) / length;
  // The centre is left of the chord on the short way round counter-clockwise.
  const side = counterClockwise === radius > 0 ? 1 : -1;
  const centre = {
    x: from.x + chord.x / 2 - side * lift * chord.y,
    y: from.y + chord.y / 2 + side * lift * chord.x,
  };
  return { centre, turn: turnAbout(centre, from, to, counterClockwise) };
}

function turnAbout(centre: Point, from: Point, to: Point, counterClockwise: boolean): number {
  const full = 2 * Math.PI;
  const angle = (point: Point) => portable.atan2(point.y - centre.y, point.x - centre.x);
  const ahead = angle(to) - angle(from);
  if (from.x === to.x && from.y === to.y) return counterClockwise ? full : -full;
  const wrapped = ((ahead % full) + full) % full;
  return counterClockwise ? wrapped : wrapped - full;
}
