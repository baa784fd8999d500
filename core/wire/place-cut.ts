import type { CutChoice } from '../cut-settings';
import type { Contour } from '../geometry/contour';
import { contourArea } from '../geometry/contour-measures';
import { pointAt } from '../geometry/loop-position';
import type { CutLayout, LayoutTrouble, RunEnd } from './cut-layout';
import type { CutWishes } from './cut-wishes';
import { positionAt, stationsOf, type Stations } from './lead-places';
import { isWayFree, loopRoom, type LoopRoom } from './loop-room';
import { leastStretch, placeStretch, type PlacedStretch } from './place-stretch';
import { runEnd } from './run-end';
import type { Site } from '../plan';
import { tabByWeight } from './tab-by-weight';

/**
 * Start holes, leads and tabs for a wire loop. `waste` says on which side of the loop the waste lies: inside it (a die
 * opening) or outside (a punch). Every tab lies on a straight, as far from corners as can be, where its witness mark
 * can be dressed off best, and the lead-in just behind it: one mark instead of two. Where the wanted hole does not fit
 * anywhere, smaller ones are tried and shorter leads with them. What a person chose goes before every rule, where it
 * is allowed.
 */
export function placeCut(
  loop: Contour,
  waste: 'inside' | 'outside',
  wishes: CutWishes,
  site: Site,
  choice: CutChoice,
  halfKerf: number,
): CutLayout {
  const room = loopRoom(loop, waste, site, halfKerf);
  const stations = stationsOf(loop, cornerRadii * halfKerf);
  const wanted = tabLengths(stations, wishes, choice);
  const lengths = wanted.map((length) =>
    Math.min(length, (stations.whole / wanted.length) * longestTabShare),
  );
  const troubles: LayoutTrouble[] = [];
  const placed: PlacedStretch[] = [];
  const count = Math.max(1, lengths.length);
  for (let number = 0; number < count; number++) {
    const query = { room, stations, wishes, choice, number, count, tabLength: lengths[number] ?? 0 };
    placed.push(placeStretch(query, placed, troubles));
  }
  const overlap = overlapOf(room, stations, placed, wishes.overlap);
  return {
    stretches: placed.map(({ start, begin }, i) => ({ start, begin, end: after(placed, i).endBefore })),
    tabs: lengths.map((_, i) => {
      const { endBefore, begin, tabLength } = after(placed, i);
      return { from: endBefore.at, to: begin.at, length: tabLength };
    }),
    wantedTabs: wanted.map((_, i) => wanted[(i + 1) % wanted.length] as number),
    closing: closingEnd(room, stations, placed[0] as PlacedStretch, wishes, overlap),
    overlap,
    troubles,
  };
}

/** An arc of less than so many half kerfs is a corner: the wire rolls round an outside corner on one. */
const cornerRadii = 1.5;

/** A tab longer than this part of its stretch would leave little to cut before it. */
const longestTabShare = 0.25;

/** The tabs' wanted lengths, one for each; none where there is to be no tab. */
function tabLengths({ whole, loop }: Stations, wishes: CutWishes, choice: CutChoice): readonly number[] {
  const piece = { area: Math.abs(contourArea(loop)), perimeter: whole, height: wishes.height };
  const typed = { count: wishes.tabLength > 0 ? wishes.tabs : 0, length: wishes.tabLength };
  const rule = wishes.tabRule === 'weight' ? tabByWeight(piece) : typed;
  // A small loop has no room for many: as much is to be cut between tabs as they are to hold.
  const count = Math.min(choice.tabs ?? rule.count, Math.max(1, Math.floor(whole / (2 * leastStretch))));
  const byRule = rule.length > 0 ? rule.length : tabByWeight(piece).length;
  return Array.from({ length: count }, (_, i) => choice.stretches[i]?.tabLength ?? byRule);
}

const after = (placed: readonly PlacedStretch[], i: number): PlacedStretch =>
  placed[(i + 1) % placed.length] as PlacedStretch;

/** The wanted overlap where the way from where the wire waits to the overlapped places is free; else none. */
function overlapOf(
  room: LoopRoom,
  stations: Stations,
  placed: readonly PlacedStretch[],
  wanted: number,
): number {
  const overlap = Math.min(wanted, stations.whole / placed.length / 8);
  const pointOn = (station: number) => pointAt(room.loop, positionAt(stations, station));
  const isFree = placed.every(
    ({ station, tabLength, begin, endBefore }) =>
      isWayFree(room, begin.wait, pointOn(station + tabLength / 2 + overlap)) &&
      isWayFree(room, endBefore.wait, pointOn(station - tabLength / 2 - overlap)),
  );
  return isFree ? overlap : 0;
}

/** A pass all round ends past its begin by the overlap. */
function closingEnd(
  room: LoopRoom,
  stations: Stations,
  { station, tabLength, begin }: PlacedStretch,
  wishes: CutWishes,
  overlap: number,
): RunEnd {
  const place = positionAt(stations, station + tabLength / 2 + overlap);
  const own = runEnd(room, place, 'end', {
    isArc: begin.arcRadius > 0,
    radius: begin.arcRadius,
    farthest: wishes.length,
  });
  return own ?? { at: pointAt(room.loop, place), wait: begin.wait, arcRadius: 0 };
}
