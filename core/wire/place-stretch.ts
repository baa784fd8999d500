import type { CutChoice } from '../cut-settings';
import type { Point } from '../geometry/contour';
import { nearestPosition, pointAt } from '../geometry/loop-position';
import type { StartHole } from '../plan';
import type { BeginPlace } from './begin-place';
import type { LayoutTrouble, RunEnd } from './cut-layout';
import type { CutWishes } from './cut-wishes';
import { leadPlaces, positionAt, roomAt, stationOf, type LeadPlace, type Stations } from './lead-places';
import type { LoopRoom } from './loop-room';
import { placeStart } from './place-start';
import { runEnd, type RunSide } from './run-end';

/** What a stretch is placed from. */
export interface StretchQuery {
  readonly room: LoopRoom;
  readonly stations: Stations;
  readonly wishes: CutWishes;
  readonly choice: CutChoice;
  /** Which stretch of how many. */
  readonly number: number;
  readonly count: number;
  /** Length of the tab before it, mm; 0 where there is none. */
  readonly tabLength: number;
}

/** A stretch's begin, with the tab before it and the end of the run on the tab's other side. */
export interface PlacedStretch {
  /** Middle of the tab. */
  readonly station: number;
  readonly tabLength: number;
  readonly start: StartHole | null;
  readonly begin: RunEnd;
  readonly endBefore: RunEnd;
}

/** Room that a tab keeps from corners where it can, mm. */
const cornerRoom = 0.5;
/** Shorter than this no tab holds anything, mm: then it rather lies over a corner. */
const shortestTab = 0.2;
/** Least way between one tab and the next, mm. */
export const leastStretch = 2;

/** Places a stretch after those before it; what a person chose and could not be taken goes to `troubles`. */
export function placeStretch(
  query: StretchQuery,
  before: readonly PlacedStretch[],
  troubles: LayoutTrouble[],
): PlacedStretch {
  const { room, stations, wishes, choice, number } = query;
  const places = placesFor(query, before, troubles).map((place) => tabAt(query, place));
  const search = (among: readonly TabPlace[]) => {
    const begins: BeginPlace[] = among.map(({ begin, end }) => ({
      position: positionAt(stations, begin),
      // A run must be able to begin on the one side of the tab and to end on the other.
      begin: once(() => (endAt(query, end, 'end') ? endAt(query, begin, 'begin') : null)),
    }));
    const fromEdge = choice.fromEdge && number === 0;
    const found = placeStart(room, begins, wishes, choice.stretches[number], fromEdge);
    return { ...found, place: among[found.placed?.place ?? 0] };
  };
  // Over a corner only where nothing else will do, not even with a smaller hole.
  const smooth = places.filter(({ isSmooth }) => isSmooth);
  const first = search(smooth);
  const { placed, trouble, place } = first.placed || smooth.length === places.length ? first : search(places);
  if (trouble) troubles.push({ ...trouble, stretch: number });
  if (!place) throw new Error('a loop without segments');
  return {
    station: place.station,
    tabLength: place.tabLength,
    start: placed?.hole ?? null,
    begin: placed?.begin ?? standing(query, place.begin),
    endBefore: endAt(query, place.end, 'end') ?? standing(query, place.end),
  };
}

interface TabPlace {
  readonly station: number;
  readonly tabLength: number;
  readonly begin: number;
  readonly end: number;
  /** Whether the tab keeps clear of corners. */
  readonly isSmooth: boolean;
}

/** The tab shortened to the room between corners. */
function tabAt({ tabLength }: StretchQuery, { station, room }: LeadPlace): TabPlace {
  const fits = 2 * room * tabShare;
  const isSmooth = tabLength <= fits || fits >= shortestTab;
  const length = isSmooth ? Math.min(tabLength, fits) : tabLength;
  return { station, tabLength: length, begin: station + length / 2, end: station - length / 2, isSmooth };
}
/** Of the way between two corners, so that a shortened tab does not touch them. */
const tabShare = 0.9;

function placesFor(
  query: StretchQuery,
  before: readonly PlacedStretch[],
  troubles: LayoutTrouble[],
): readonly LeadPlace[] {
  const { stations, choice, number, tabLength } = query;
  const wanted = choice.stretches[number]?.place;
  const window = windowFor(query, before);
  if (wanted) {
    const station = stationOf(stations, nearestPosition(stations.loop, wanted));
    if (!window || isWithin(window, station, stations.whole)) {
      return [{ station, flat: 0, room: roomAt(stations, station) }];
    }
    troubles.push({ kind: 'place', stretch: number, at: wanted, because: 'past another tab' });
  }
  const places = leadPlaces(stations, tabLength / 2 + cornerRoom, window);
  if (places.length > 0 || !window) return places;
  const station = window.from % stations.whole;
  return [{ station, flat: 0, room: roomAt(stations, station) }];
}

/** Where a stretch after the first may lie, in stations from the first one's on: any place, and the rule's share of them. */
interface Window {
  readonly least: number;
  readonly most: number;
  readonly from: number;
  readonly to: number;
  readonly target: number;
}

/** Behind the one before it, and leaving room for those to come; the rule shares the loop evenly. */
function windowFor(
  { stations: { whole }, number, count, tabLength }: StretchQuery,
  before: readonly PlacedStretch[],
): Window | null {
  const [first] = before;
  const last = before.at(-1);
  if (!first || !last) return null;
  const share = whole / count;
  const own = tabLength + leastStretch;
  const least =
    first.station +
    ahead(first.station, last.station, whole) +
    (last.tabLength + tabLength) / 2 +
    leastStretch;
  const most = first.station + whole - (count - number) * own;
  const target = first.station + number * share;
  const from = Math.min(most, Math.max(least, target - share / 2));
  return { least, most, from, to: Math.min(most, Math.max(target + share / 2, from + share / 2)), target };
}

function isWithin({ least, most }: Window, station: number, whole: number): boolean {
  const on = station < least ? station + whole : station;
  return on >= least && on <= most;
}

/** How far one station lies ahead of another, mm. */
const ahead = (from: number, to: number, whole: number): number => (((to - from) % whole) + whole) % whole;

function endAt(
  { room, stations, wishes, tabLength }: StretchQuery,
  station: number,
  side: RunSide,
): RunEnd | null {
  return runEnd(room, positionAt(stations, station), side, {
    isArc: wishes.shape === 'tangent arc',
    // Both arcs curve over the tab: they leave half its width standing as its neck.
    radius: tabLength > 0 ? Math.min(wishes.arcRadius, tabLength / 4) : wishes.arcRadius,
    farthest: wishes.length,
  });
}

/** Where nothing fits: on the loop itself. */
function standing({ room, stations }: StretchQuery, station: number): RunEnd {
  const at: Point = pointAt(room.loop, positionAt(stations, station));
  return { at, wait: at, arcRadius: 0 };
}

function once<T>(compute: () => T): () => T {
  let known: { value: T } | null = null;
  return () => (known ??= { value: compute() }).value;
}
