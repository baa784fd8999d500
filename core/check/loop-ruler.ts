import Flatbush from 'flatbush';
import type { Contour, Point, Vertex } from '../geometry/contour';
import { boxOfMove, lengthOf, pointOn, turnBetween, type PlainMove } from './beside-move';
import * as portable from '../geometry/portable-math';

/** A place on a loop: how far along it, mm, and how far off it the point was that was asked for. */
export interface RulerPlace {
  readonly along: number;
  readonly off: number;
}

/**
 * A closed loop with its length marked along it. Written without the geometry room, as all of the proof is: an arc's
 * centre by L(1 − b²)/(4b), DXF reference, group 42.
 */
export class LoopRuler {
  readonly length: number;
  private readonly segments: readonly PlainMove[];
  private readonly starts: readonly number[];
  private readonly tree: Flatbush;

  constructor(loop: Contour) {
    this.segments = contourMoves(loop);
    let along = 0;
    this.starts = this.segments.map((segment) => {
      const start = along;
      along += lengthOf(segment);
      return start;
    });
    this.length = along;
    this.tree = new Flatbush(this.segments.length);
    for (const segment of this.segments) {
      const { minX, minY, maxX, maxY } = boxOfMove(segment);
      this.tree.add(minX, minY, maxX, maxY);
    }
    this.tree.finish();
  }

  /** The point so far along; the loop goes round and round. */
  pointAt(along: number): Point {
    const place = this.wrapped(along);
    const i = this.segmentAt(place);
    const segment = this.segments[i] as PlainMove;
    return pointOn(segment, place - (this.starts[i] ?? 0));
  }

  /** The nearest place of the whole loop within a distance; null where there is none. O(log n). */
  nearestWithin(point: Point, distance: number): RulerPlace | null {
    let best: RulerPlace = { along: 0, off: Infinity };
    const [left, low] = [point.x - distance, point.y - distance];
    this.tree.search(left, low, point.x + distance, point.y + distance, (i) => {
      best = nearerOf(best, this.onSegment(i, point));
      return false;
    });
    return best.off <= distance ? best : null;
  }

  /** The nearest place no farther along the loop from `about` than `slack`, up to whole segments. */
  nearestAround(point: Point, about: number, slack: number): RulerPlace {
    const count = this.segments.length;
    const first = this.segmentAt(this.wrapped(about - slack));
    const last = this.segmentAt(this.wrapped(about + slack));
    let best: RulerPlace = { along: 0, off: Infinity };
    for (let k = 0; k < count; k++) {
      const i = (first + k) % count;
      best = nearerOf(best, this.onSegment(i, point));
      if (i === last) break;
    }
    return best;
  }

  private onSegment(i: number, point: Point): RulerPlace {
    const segment = this.segments[i] as PlainMove;
    const length = lengthOf(segment);
    const along = Math.min(length, Math.max(0, footOn(segment, point)));
    const foot = pointOn(segment, along);
    return { along: (this.starts[i] ?? 0) + along, off: Math.hypot(point.x - foot.x, point.y - foot.y) };
  }

  private wrapped(along: number): number {
    return ((along % this.length) + this.length) % this.length;
  }

  /** The last segment that starts at or before the place. */
  private segmentAt(place: number): number {
    let [low, high] = [0, this.starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.starts[middle] ?? 0) <= place) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}

const nearerOf = (a: RulerPlace, b: RulerPlace): RulerPlace => (b.off < a.off ? b : a);

/** A contour's segments as moves. */
export const contourMoves = (loop: Contour): readonly PlainMove[] =>
  loop.map((from, i) => segmentMove(from, loop[(i + 1) % loop.length] as Vertex));

function segmentMove(from: Vertex, to: Vertex): PlainMove {
  const { bulge } = from;
  if (bulge === 0) return { from, to, centre: null, turn: 0 };
  const lift = (1 - bulge * bulge) / (4 * bulge);
  const centre = {
    x: (from.x + to.x) / 2 - (to.y - from.y) * lift,
    y: (from.y + to.y) / 2 + (to.x - from.x) * lift,
  };
  return { from, to, centre, turn: 4 * portable.atan(bulge) };
}

/** How far along a segment the foot of a point is, mm; outside of 0 to its length where the foot lies beyond an end. */
function footOn(move: PlainMove, point: Point): number {
  const { from, to, centre, turn } = move;
  const length = lengthOf(move);
  if (length === 0) return 0;
  if (!centre) return ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / length;
  const angle = turnBetween(
    { x: from.x - centre.x, y: from.y - centre.y },
    { x: point.x - centre.x, y: point.y - centre.y },
  );
  const ahead = angle * Math.sign(turn);
  // Beyond the end by less than half of what the arc leaves of the full turn: nearer to its end than to its start.
  const full = 2 * Math.PI;
  const past = ahead < 0 ? ahead + full : ahead;
  const beyond = past - Math.abs(turn);
  const share = beyond > (full - Math.abs(turn)) / 2 ? past - full : past;
  return (share / Math.abs(turn)) * length;
}
