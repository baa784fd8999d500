import type { StretchChoice } from '../cut-settings';
import type { Point } from '../geometry/contour';
import type { StartHole } from '../plan';
import type { BeginPlace, PlacedStart, StartSearch } from './begin-place';
import type { RunEnd } from './cut-layout';
import type { CutWishes } from './cut-wishes';
import { edgeStart } from './edge-start';
import { besidePlace, isFree, isWayFree, type LoopRoom } from './loop-room';
import { discTrouble, drawnHoleAt } from './site';
import { startHoleTrouble } from './start-hole-trouble';
import { tolerance } from '../geometry/tolerance';

/** Start hole diameters to fall back on, mm (common practice: 3 mm drilled down to 0.3 mm spark-eroded). */
export const startHoleDiameters = [3, 2, 1.5, 1, 0.8, 0.5, 0.3] as const;

/** Where the wire is threaded for a stretch: from the block's edge or where a person said, else by the rule. */
export function placeStart(
  room: LoopRoom,
  places: readonly BeginPlace[],
  wishes: CutWishes,
  choice: StretchChoice | undefined,
  fromEdge: boolean,
): StartSearch {
  const byRule = () =>
    drawnStart(room, places, wishes) ?? squareStart(room, places, wishes, choice?.holeDiameter ?? null);
  if (fromEdge) {
    const edge = edgeStart(room, places);
    return edge.placed ? { placed: edge.placed, trouble: null } : { placed: byRule(), trouble: edge.trouble };
  }
  if (!choice?.hole) return { placed: byRule(), trouble: null };
  const { hole } = choice;
  const drawn = drawnHoleAt(room.site.site, hole, tolerance.gap);
  const diameter = drawn?.diameter ?? choice.holeDiameter ?? wishes.holeDiameter;
  const start: StartHole = { ...hole, diameter, kind: drawn ? 'drawn' : 'drilled' };
  const because = startHoleTrouble(room, { ...start, clearance: wishes.holeClearance });
  const placed = because === null ? joined(room, places, start, wishes) : null;
  if (placed) return { placed, trouble: null };
  const reason = because ?? 'without a straight way through the waste to the lead-in';
  return { placed: byRule(), trouble: { kind: 'hole', at: hole, because: reason } };
}

/** The start hole joined to the best place that it sees. */
function joined(
  room: LoopRoom,
  places: readonly BeginPlace[],
  hole: StartHole,
  { shape }: CutWishes,
): PlacedStart | null {
  for (const [place, { begin: beginOf }] of places.entries()) {
    const begin = beginOf();
    if (!begin) continue;
    const end = shape === 'straight' ? towards(hole, begin) : begin;
    if (isWayFree(room, hole, shape === 'straight' ? end.at : end.wait)) return { place, hole, begin: end };
  }
  return null;
}

/** The wire waits on the straight line to the hole. */
function towards(hole: Point, end: RunEnd): RunEnd {
  const { at, wait } = end;
  const back = Math.hypot(wait.x - at.x, wait.y - at.y);
  const length = Math.hypot(hole.x - at.x, hole.y - at.y);
  const part = Math.min(1, back / length);
  return { at, wait: { x: at.x + (hole.x - at.x) * part, y: at.y + (hole.y - at.y) * part }, arcRadius: 0 };
}

/** A hole that the drawing has, the nearest to the best place that sees one. */
function drawnStart(room: LoopRoom, places: readonly BeginPlace[], wishes: CutWishes): PlacedStart | null {
  if (!wishes.drawnHoles) return null;
  const holes = room.site.site.drawnHoles.filter(
    (hole) =>
      hole.diameter > wishes.wireDiameter &&
      startHoleTrouble(room, { ...hole, clearance: wishes.holeClearance }) === null,
  );
  for (const [place, each] of places.entries()) {
    const begin = holes.length > 0 ? each.begin() : null;
    if (!begin) continue;
    const away = ({ x, y }: Point): number => Math.hypot(x - begin.at.x, y - begin.at.y);
    for (const { x, y, diameter } of [...holes].sort((a, b) => away(a) - away(b))) {
      const placed = joined(room, [each], { x, y, diameter, kind: 'drawn' }, wishes);
      if (placed) return { ...placed, place };
    }
  }
  return null;
}

/** A hole of its own, square off the best place that has room for it: the wanted diameter first, then smaller ones. */
function squareStart(
  room: LoopRoom,
  places: readonly BeginPlace[],
  wishes: CutWishes,
  ownDiameter: number | null,
): PlacedStart | null {
  const wanted = ownDiameter ?? wishes.holeDiameter;
  const diameters = [wanted, ...startHoleDiameters.filter((d) => d < wanted)];
  for (const diameter of diameters) {
    const least = diameter / 2 + wishes.holeClearance;
    for (const [place, { position, begin: beginOf }] of places.entries()) {
      for (const length of leadLengths(Math.max(wishes.length, least), least)) {
        const at = besidePlace(room, position, length);
        if (!isFree(room, at, least)) continue;
        if (discTrouble(room.site, at, diameter / 2, wishes.holeClearance) !== null) continue;
        const begin = beginOf();
        if (begin && isWayFree(room, at, begin.wait)) {
          return { place, hole: { ...at, diameter, kind: 'drilled' }, begin };
        }
      }
    }
  }
  return null;
}

/** The wanted length, then shorter ones down to the least. */
function leadLengths(wanted: number, least: number): readonly number[] {
  const lengths: number[] = [];
  for (let length = wanted; length > least; length *= 0.8) lengths.push(length);
  return [...lengths, least];
}
