import type { Contour, Vertex } from '../geometry/contour';
import { arcOf, segmentLength } from '../geometry/contour-measures';
import type { LoopPosition } from '../geometry/loop-position';
import * as portable from '../geometry/portable-math';

/** A place of a loop where a tab and the lead-in beside it may lie. Stations are mm along the loop from its first vertex. */
export interface LeadPlace {
  readonly station: number;
  /** To the nearer end of the straight it lies on, mm; 0 on an arc. */
  readonly flat: number;
  /** To the nearest corner, mm; Infinity where the loop has none. */
  readonly room: number;
}

/** A loop's lengths and corners, made once for all questions. */
export interface Stations {
  readonly loop: Contour;
  readonly whole: number;
  /** Where each segment begins; one more entry for the end. */
  readonly starts: readonly number[];
  /** Corners as stretches of the loop: points where it turns at once, and arcs tighter than the limit. */
  readonly corners: readonly { readonly from: number; readonly to: number }[];
}

/** `tightest`: an arc of a smaller radius counts as a corner, as the arc does by which the wire rolls round one, mm. */
export function stationsOf(loop: Contour, tightest: number): Stations {
  const starts = [0];
  const corners: { from: number; to: number }[] = [];
  loop.forEach((from, i) => {
    const to = loop[(i + 1) % loop.length] as Vertex;
    const before = loop[(i - 1 + loop.length) % loop.length] as Vertex;
    const start = starts[i] as number;
    const end = start + segmentLength(from, to);
    starts.push(end);
    if (from.bulge !== 0 && arcOf(from, to).radius < tightest) corners.push({ from: start, to: end });
    else if (turnAt(before, from, to) > cornerTurn) corners.push({ from: start, to: start });
  });
  return { loop, whole: starts[loop.length] as number, starts, corners };
}

/** Radians: a bend of less than a degree between neighbours counts as smooth. */
const cornerTurn = Math.PI / 180;

/**
 * Places between two stations (`to` may go beyond the whole), best first: a witness mark matters least and is dressed
 * off best in the middle of a long straight, `need` mm clear of both its ends, in a window as near to its target as can
 * be; then where corners are farthest. One for each segment.
 */
export function leadPlaces(
  stations: Stations,
  need: number,
  window: { readonly from: number; readonly to: number; readonly target: number } | null,
): readonly LeadPlace[] {
  const { loop, starts, whole } = stations;
  const places: LeadPlace[] = [];
  const add = (from: number, to: number, isStraight: boolean): void => {
    if (to <= from) return;
    // As near to the target as the ends allow, else in the middle.
    const middle = (from + to) / 2;
    const keep = Math.min(isStraight ? need : 0, (to - from) / 2);
    const station = window ? Math.min(to - keep, Math.max(from + keep, window.target)) : middle;
    const flat = isStraight ? Math.min(station - from, to - station) : 0;
    places.push({ station: station % whole, flat, room: roomAt(stations, station % whole) });
  };
  loop.forEach(({ bulge }, i) => {
    const [start, end] = [starts[i] as number, starts[i + 1] as number];
    if (!window) return add(start, end, bulge === 0);
    for (const turn of [0, whole]) {
      add(Math.max(start + turn, window.from), Math.min(end + turn, window.to), bulge === 0);
    }
  });
  const target = window?.target ?? null;
  const away = ({ station }: LeadPlace): number => (target === null ? 0 : gapBetween(station, target, whole));
  const rank = ({ flat, room }: LeadPlace): number => (flat >= need ? 2 : room >= need ? 1 : 0);
  return places
    .sort(
      (a, b) =>
        rank(b) - rank(a) ||
        (rank(a) > 0 ? away(a) - away(b) : 0) ||
        b.flat - a.flat ||
        b.room - a.room ||
        a.station - b.station,
    )
    .slice(0, placesTried);
}
const placesTried = 60;

/** From a station to the nearest corner, mm, either way round; Infinity where there is none. O(log n). */
export function roomAt({ corners, whole }: Stations, station: number): number {
  // Corners lie in order: only the last that begins before the station and the next one can be nearest.
  let low = -1;
  let high = corners.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((corners[middle] as { from: number }).from <= station) low = middle;
    else high = middle;
  }
  return [corners.at(low), corners[high % corners.length]].reduce((least, corner) => {
    if (!corner) return least;
    const { from, to } = corner;
    if (station >= from && station <= to) return 0;
    return Math.min(least, gapBetween(station, from, whole), gapBetween(station, to, whole));
  }, Infinity);
}

/** The shorter way round between two stations, mm. */
export function gapBetween(a: number, b: number, whole: number): number {
  const ahead = (((b - a) % whole) + whole) % whole;
  return Math.min(ahead, whole - ahead);
}

/** A station as a place of the loop; beyond either end it goes round again. */
export function positionAt({ loop, starts, whole }: Stations, station: number): LoopPosition {
  const at = ((station % whole) + whole) % whole;
  let low = 0;
  let high = loop.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((starts[middle] as number) <= at) low = middle;
    else high = middle - 1;
  }
  const start = starts[low] as number;
  const own = (starts[low + 1] as number) - start;
  return { segment: low, along: own === 0 ? 0 : Math.min(1, (at - start) / own) };
}

export const stationOf = ({ starts }: Stations, { segment, along }: LoopPosition): number =>
  (starts[segment] as number) + along * ((starts[segment + 1] as number) - (starts[segment] as number));

/** Turn between two neighbouring segments where they meet, radians, 0 to π. */
function turnAt(before: Vertex, at: Vertex, after: Vertex): number {
  const arriving = portable.atan2(at.y - before.y, at.x - before.x) + 2 * portable.atan(before.bulge);
  const leaving = portable.atan2(after.y - at.y, after.x - at.x) - 2 * portable.atan(at.bulge);
  const turn = leaving - arriving;
  return Math.abs(portable.atan2(portable.sin(turn), portable.cos(turn)));
}
