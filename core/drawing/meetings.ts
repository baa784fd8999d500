import type { Contour } from '../geometry/contour';
import { crossingContours, type Crossing } from './crossing-contours';
import { partTouching, passesThrough } from './part-touching';
import type { RepairLog } from './repair-log';
import type { Ring } from './ring';

/** Two contours that meet, or one that meets itself, and whether they only touch. */
export interface Meeting extends Crossing {
  readonly isTouch: boolean;
}

/** Rings, those that touch themselves parted there, and all meetings among them; indices are those of `rings`. */
export function meetingsOf(
  rings: readonly Ring[],
  log: RepairLog,
): { readonly rings: readonly Ring[]; readonly meetings: readonly Meeting[] } {
  const crossings = crossingContours(rings.map(({ contour }) => contour));
  const own = new Map(
    crossings.filter(({ first, second }) => first === second).map((c) => [c.first, c.places]),
  );
  let isParted = false;
  const parted = rings.flatMap((ring, i) => {
    const places = log.isOn('self-touch') ? own.get(i) : undefined;
    const parts = places && partTouching(ring, places, log);
    if (parts) isParted = true;
    return parts ?? [ring];
  });
  const contours = parted.map(({ contour }) => contour);
  const found = isParted ? crossingContours(contours) : crossings;
  return {
    rings: parted,
    meetings: found.map((crossing) => ({ ...crossing, isTouch: isTouch(crossing, contours) })),
  };
}

function isTouch({ first, second, places }: Crossing, contours: readonly Contour[]): boolean {
  if (first === second) return false;
  return !passesThrough(contours[first] as Contour, contours[second] as Contour, places);
}
