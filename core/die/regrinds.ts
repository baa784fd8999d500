import * as portable from '../geometry/portable-math';

/** Straight land at the cutting edge and the relief behind it. mm and radians. */
export interface LandAndRelief {
  readonly land: number;
  /** Per side; 0 for a straight opening. */
  readonly relief: number;
}

/** How much an opening grows on each side when `ground` mm are taken off its face inside the relief: g·tan α. */
export const growthPerGrind = (ground: number, relief: number): number => ground * portable.tan(relief);

/** How much wider on each side the opening is at its far face than at the edge: (height − land)·tan α. */
export const exitEnlargement = (height: number, { land, relief }: LandAndRelief): number =>
  Math.max(0, height - land) * portable.tan(relief);

/**
 * How often the face can be ground until the land is used up; with no relief behind it, until the block is down to
 * `leastHeight`. Whole regrinds.
 */
export function regrindsLeft(
  { land, relief }: LandAndRelief,
  perGrind: number,
  height: number,
  leastHeight: number,
): number {
  const usable = Math.min(relief > 0 ? land : Infinity, height - leastHeight);
  // A land of three tenths is three grinds of a tenth, whatever the last binary digit says.
  return Math.max(0, Math.floor(usable / perGrind + 1 / 1_000_000_000));
}
