import { crossingContours, type Crossing } from './crossing-contours';
import { limits } from './limits';
import { partTouching, passesThrough, placed, type Placed } from './part-touching';
import type { RepairLog } from './repair-log';
import type { Ring } from './ring';

/** Two contours that meet, or one that meets itself, and whether they only touch. */
export interface Meeting extends Crossing {
  readonly isTouch: boolean;
}

export interface Meetings {
  /** The rings, those that touch themselves parted there. */
  readonly rings: readonly Ring[];
  /** Indices are those of `rings`. */
  readonly meetings: readonly Meeting[];
}

/** All meetings among rings; null where so much overlaps that it would take for ever. */
export function meetingsOf(rings: readonly Ring[], log: RepairLog): Meetings | null {
  const crossings = crossingContours(rings.map(({ contour }) => contour));
  if (!crossings) return null;
  const own = new Map<number, Crossing>();
  for (const crossing of crossings)
    if (crossing.first === crossing.second && isTold(crossing)) own.set(crossing.first, crossing);
  let isParted = false;
  const parted = rings.flatMap((ring, i) => {
    const places = log.isOn('self-touch') ? own.get(i)?.places : undefined;
    const parts = places && partTouching(ring, places, log);
    if (parts) isParted = true;
    return parts ?? [ring];
  });
  const found = isParted ? crossingContours(parted.map(({ contour }) => contour)) : crossings;
  if (!found) return null;
  const known = new Map<number, Placed>();
  const at = (i: number): Placed => {
    const one = known.get(i) ?? placed((parted[i] as Ring).contour);
    known.set(i, one);
    return one;
  };
  const isTouch = (crossing: Crossing): boolean =>
    crossing.first !== crossing.second &&
    isTold(crossing) &&
    !passesThrough(at(crossing.first), at(crossing.second), crossing.places);
  return { rings: parted, meetings: found.map((crossing) => ({ ...crossing, isTouch: isTouch(crossing) })) };
}

/** Whether all places are known: only then can touching be told from crossing. */
const isTold = ({ places }: Crossing): boolean => places.length < limits.meetingPlaces;
