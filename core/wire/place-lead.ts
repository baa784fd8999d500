import type { Contour, Point, Vertex } from '../geometry/contour';
import { contourArea, contourLength, segmentLength } from '../geometry/contour-measures';
import { crossSegments, crossingRoom } from '../geometry/cross-segments';
import { directionOf, pointAt, positionAfter, type LoopPosition } from '../geometry/loop-position';
import { indexOf, isNearer, type SegmentIndex } from '../geometry/segment-index';
import { addSegment, emptyTable, tableOfRegion } from '../geometry/segment-table';
import { windingNumber } from '../geometry/winding';
import type { Lead } from './cut-path';

export interface LeadWishes {
  readonly holeDiameter: number;
  /** From the hole's edge to the path, mm. */
  readonly holeClearance: number;
  /** From the hole's centre to the path, mm. */
  readonly length: number;
  readonly tabLength: number;
}

/** Start hole diameters to fall back on, mm (common practice: 3 mm drilled down to 0.3 mm spark-eroded). */
export const startHoleDiameters = [3, 2, 1.5, 1, 0.8, 0.5, 0.3] as const;

/** A tab longer than this part of the contour would leave nothing to cut before it. */
const longestTabShare = 0.25;

/** How far into the waste the wire steps back at the end of a run where there is room, mm (common practice: 1 mm). */
const stepBack = 1;

/**
 * Start hole, straight lead-in and tab for a wire loop. `waste` says on which side of the loop the waste lies: inside
 * it (a die opening) or outside (a punch). The tab is centred on the longest straight, where its witness mark can be
 * dressed off best; the lead-in stands square on the contour just behind it. Where the wanted hole does not fit
 * anywhere, smaller ones are tried and shorter leads with them; `start` is null where not even the smallest fits.
 */
export function placeLead(loop: Contour, waste: 'inside' | 'outside', wishes: LeadWishes): Lead {
  const tabLength = Math.min(wishes.tabLength, contourLength(loop) * longestTabShare);
  const room = roomOf(loop, waste);
  const places = leadPlaces(loop, tabLength);
  const diameters = [wishes.holeDiameter, ...startHoleDiameters.filter((d) => d < wishes.holeDiameter)];
  for (const diameter of diameters) {
    const least = diameter / 2 + wishes.holeClearance;
    for (const place of places) {
      for (const length of leadLengths(Math.max(wishes.length, least), least)) {
        const start = besidePlace(loop, place.begin, room.normalSign, length);
        if (!isFree(room, start, least) || !seesLoop(room, start, pointAt(loop, place.begin))) continue;
        const lead = leadAt(loop, room, place, tabLength, length);
        if (lead) return { ...lead, start: { ...start, diameter, kind: 'drilled' } };
      }
    }
  }
  const place = places[0] as LeadPlace;
  const begin = pointAt(loop, place.begin);
  const end = pointAt(loop, place.end);
  return { start: null, begin, end, besideBegin: begin, besideEnd: end, tabLength };
}

interface LeadPlace {
  readonly begin: LoopPosition;
  readonly end: LoopPosition;
}

/** Middles of the segments, straights before arcs, long before short; the tab lies half to either side. */
function leadPlaces(loop: Contour, tabLength: number): readonly LeadPlace[] {
  return loop
    .map((v, segment) => ({
      segment,
      straight: v.bulge === 0,
      length: segmentLength(v, loop[(segment + 1) % loop.length] as Vertex),
    }))
    .sort((a, b) => Number(b.straight) - Number(a.straight) || b.length - a.length || a.segment - b.segment)
    .slice(0, placesTried)
    .map(({ segment }) => {
      const middle = { segment, along: 0.5 };
      return {
        begin: positionAfter(loop, middle, tabLength / 2),
        end: positionAfter(loop, middle, -tabLength / 2),
      };
    });
}
const placesTried = 40;

/** The wanted length, then shorter ones down to the least. */
function leadLengths(wanted: number, least: number): readonly number[] {
  const lengths: number[] = [];
  for (let length = wanted; length > least; length *= 0.8) lengths.push(length);
  return [...lengths, least];
}

function leadAt(
  loop: Contour,
  room: Room,
  place: LeadPlace,
  tabLength: number,
  leadLength: number,
): Omit<Lead, 'start'> | null {
  const begin = pointAt(loop, place.begin);
  const end = pointAt(loop, place.end);
  for (let back = Math.min(stepBack, leadLength); back > stepBack / 20; back /= 2) {
    const besideEnd = besidePlace(loop, place.end, room.normalSign, back);
    // Half the way back is room enough: the loop may bend towards the place but not up to it.
    if (!isFree(room, besideEnd, back / 2) || !seesLoop(room, besideEnd, end)) continue;
    return {
      begin,
      end,
      besideBegin: besidePlace(loop, place.begin, room.normalSign, back),
      besideEnd,
      tabLength,
    };
  }
  return null;
}

interface Room {
  readonly loop: Contour;
  readonly waste: 'inside' | 'outside';
  readonly index: SegmentIndex;
  /** +1 where the waste lies left of travel. */
  readonly normalSign: 1 | -1;
}

function roomOf(loop: Contour, waste: 'inside' | 'outside'): Room {
  const insideIsLeft = contourArea(loop) > 0;
  return {
    loop,
    waste,
    index: indexOf(tableOfRegion([loop])),
    normalSign: insideIsLeft === (waste === 'inside') ? 1 : -1,
  };
}

function besidePlace(loop: Contour, place: LoopPosition, sign: 1 | -1, distance: number): Point {
  const at = pointAt(loop, place);
  const direction = directionOf(loop, place);
  return { x: at.x - direction.y * sign * distance, y: at.y + direction.x * sign * distance };
}

/** In the waste and nowhere nearer to the path than the least distance. */
function isFree(room: Room, point: Point, least: number): boolean {
  const inside = windingNumber(room.loop, point.x, point.y) !== 0;
  // A hair less, so that a lead exactly as long as needed is long enough.
  return inside === (room.waste === 'inside') && !isNearer(room.index, point.x, point.y, least * (1 - hair));
}
const hair = 1 / 1_000_000;

/** Whether the straight line from a point in the waste meets the loop only at its end. */
function seesLoop(room: Room, from: Point, to: Point): boolean {
  const line = emptyTable(1);
  // Stop short of the loop: the end itself touches it.
  const short = 1 / 1000;
  addSegment(line, from.x, from.y, to.x + (from.x - to.x) * short, to.y + (from.y - to.y) * short, 0);
  const out = new Float64Array(crossingRoom);
  for (let i = 0; i < room.index.table.count; i++) {
    if (crossSegments(line, 0, room.index.table, i, out) > 0) return false;
  }
  return true;
}
