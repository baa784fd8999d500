import type { Chain, Contour, Point } from '../geometry/contour';
import { directionOf, pointAt, type LoopPosition } from '../geometry/loop-position';
import type { RunEnd } from './cut-layout';
import { besidePlace, isFree, isWayFree, type LoopRoom } from './loop-room';
import * as portable from '../geometry/portable-math';

/** The begin of a run in the direction of travel, or its end. */
export type RunSide = 'begin' | 'end';

export interface EndWishes {
  readonly isArc: boolean;
  /** Of the arc, mm. */
  readonly radius: number;
  /** Farthest the wire may wait from the loop, mm. */
  readonly farthest: number;
}

/** How far into the waste the wire steps back at the end of a run where there is room, mm (common practice: 1 mm). */
const stepBack = 1;

/**
 * How a run may begin or end at a place of the rough loop; null where there is no room in the waste. An arc runs into
 * the loop without a bend, after a straight that is longer than the wire's offset: along it a control switches its
 * offset on. Where no arc has room the wire comes square to the loop.
 */
export function runEnd(room: LoopRoom, place: LoopPosition, side: RunSide, wishes: EndWishes): RunEnd | null {
  const arc = wishes.isArc ? arcEnd(room, place, side, wishes) : null;
  return arc ?? squareEnd(room, place, wishes.farthest);
}

function squareEnd(room: LoopRoom, place: LoopPosition, farthest: number): RunEnd | null {
  const at = pointAt(room.loop, place);
  for (let back = Math.min(stepBack, farthest); back > stepBack / 20; back /= 2) {
    const wait = besidePlace(room, place, back);
    // Half the way back is room enough: the loop may bend towards the place but not up to it.
    if (isFree(room, wait, back / 2) && isWayFree(room, wait, at)) return { at, wait, arcRadius: 0 };
  }
  return null;
}

function arcEnd(room: LoopRoom, place: LoopPosition, side: RunSide, wishes: EndWishes): RunEnd | null {
  const { halfKerf } = room;
  const at = pointAt(room.loop, place);
  for (let radius = wishes.radius; radius > wishes.radius / 8; radius *= 0.7) {
    // A ball that touches the loop at the place and nowhere else holds the whole arc.
    if (!isFree(room, besidePlace(room, place, radius), radius)) continue;
    for (const straight of [Math.max(stepBack, 2 * halfKerf), 1.5 * halfKerf]) {
      const [wait, foot] = arcLead(at, directionOf(room.loop, place), room.wasteSign, side, radius, straight);
      if (isFree(room, wait, straight / 2) && isWayFree(room, wait, foot))
        return { at, wait, arcRadius: radius };
    }
  }
  return null;
}

/** Where the wire waits, and where the straight from there becomes the arc. */
function arcLead(
  at: Point,
  along: Point,
  wasteSign: 1 | -1,
  side: RunSide,
  radius: number,
  straight: number,
): readonly [wait: Point, foot: Point] {
  const off = { x: -along.y * wasteSign, y: along.x * wasteSign };
  const back = side === 'begin' ? -radius : radius;
  const foot = { x: at.x + off.x * radius + along.x * back, y: at.y + off.y * radius + along.y * back };
  return [{ x: foot.x + off.x * straight, y: foot.y + off.y * straight }, foot];
}

/**
 * The way from where the wire waits to a pass's loop, at the place of that loop beside the end. `outer` is how much
 * farther from the waste the loop lies than the wire's centre (the offset of a contour that a control offsets by
 * itself): its arcs are so much larger.
 */
export function leadTo(
  end: RunEnd,
  loop: Contour,
  place: LoopPosition,
  side: RunSide,
  wasteSign: 1 | -1,
  outer: number,
): Chain {
  const at = pointAt(loop, place);
  const wait = { ...end.wait, bulge: 0 };
  if (end.arcRadius === 0) return [wait, { ...at, bulge: 0 }];
  const [, foot] = arcLead(at, directionOf(loop, place), wasteSign, side, end.arcRadius + outer, 0);
  // A quarter turn: into the loop's direction at a begin, against it at an end.
  const bulge = quarterTurn * wasteSign * (side === 'begin' ? 1 : -1);
  return [wait, { ...foot, bulge }, { ...at, bulge: 0 }];
}

/** tan(90° / 4) (DXF reference, bulge). */
const quarterTurn = portable.tan(Math.PI / 8);
