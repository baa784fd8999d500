import type { Point, Region } from '../geometry/contour';
import { indexOf, nearestSegment, type SegmentIndex } from '../geometry/segment-index';
import { directionAt, pointAlong } from '../geometry/along-segment';
import { isBesideArc, num, tableOfRegion } from '../geometry/segment-table';
import { cornerTurn } from '../geometry/segment-turn';
import { footOn, nearestSite } from '../geometry/site';
import { tolerance } from '../geometry/tolerance';
import { between, contourAt, pointOfSegment } from '../wire/taper-chain';
import type { TaperLoop, TaperPair } from '../wire/taper-loop';

export interface RuledQuery {
  /** The wire's paths as they are written, in the program's plane and that of the wire's upper end. */
  readonly loops: readonly TaperLoop[];
  /** Between the two planes, mm. */
  readonly height: number;
  /** Half the wire and its spark gap, square to the wire, mm. */
  readonly cuttingRadius: number;
  /** The opening as it is wanted at a share of the height. */
  readonly wallAt: (share: number) => Region;
}

/** How far the cut surface is from the wanted one in one plane, mm, and where. */
export interface PlaneDeviation {
  /** Of the height: 0 the program's plane, 1 the upper plane. */
  readonly share: number;
  /** Deepest cut beyond the wanted wall. */
  readonly gouge: number;
  readonly gougeAt: Point | null;
  /** Deepest stock left before it. */
  readonly remainder: number;
  readonly remainderAt: Point | null;
}

/**
 * The surface that a leaning wire cuts against the wanted one, plane by plane.
 *
 * A horizontal plane cuts the wire in an ellipse. In a direction n it reaches ρ·√(1 + (m·n)²), where ρ is the cutting
 * radius and m the wire's sideways run per height: square to a wall at angle α that is ρ / cos α. Every stretch moves
 * the wire in a plane, in a cone or whole, so that its deviation has its extremes at its ends and its middle: the
 * maxima are exact. (A stretch of two arcs that turn by different angles, beside a corner that moves whole, is right
 * to the second order of that difference.)
 *
 * Stock counts as left where the path is nowhere nearer to the wall than at the stretch looked at: the tip of a sharp
 * path cuts no wall.
 */
export function ruledDeviations(query: RuledQuery, shares: readonly number[]): readonly PlaneDeviation[] {
  return shares.map((share) => {
    const wall = indexOf(tableOfRegion(query.wallAt(share)));
    const path = indexOf(tableOfRegion(query.loops.map((loop) => contourAt(loop, share))));
    const worst = {
      gouge: 0,
      gougeAt: null as Point | null,
      remainder: 0,
      remainderAt: null as Point | null,
    };
    for (const wire of wiresOf(query, share)) {
      const cut = cutInto(wire, wall, query.cuttingRadius);
      if (cut.depth > worst.gouge) [worst.gouge, worst.gougeAt] = [cut.depth, cut.at];
      const left = leftBefore(wire, wall, path, query.cuttingRadius);
      if (left && left.depth > worst.remainder) [worst.remainder, worst.remainderAt] = [left.depth, left.at];
    }
    return { share, ...worst };
  });
}

/** The wire at one moment in one plane: its centre there, and how far it runs sideways for each mm of height. */
interface Wire {
  readonly x: number;
  readonly y: number;
  readonly mx: number;
  readonly my: number;
}

/** Ends, quarters and middle of every stretch. */
const looks = [0, 0.25, 0.5, 0.75];

function wiresOf({ loops, height }: RuledQuery, share: number): readonly Wire[] {
  return loops.flatMap((loop) =>
    loop.flatMap((own, i) => {
      const next = loop[(i + 1) % loop.length] as TaperPair;
      return looks.map((along) => {
        const lower = pointOfSegment(own.lower, next.lower, along);
        const upper = pointOfSegment(own.upper, next.upper, along);
        const [mx, my] = [(upper.x - lower.x) / height, (upper.y - lower.y) / height];
        return { ...between(lower, upper, share), mx, my };
      });
    }),
  );
}

interface Depth {
  readonly depth: number;
  readonly at: Point;
}

/** How deep the wire is in the wall: square to the nearest place, and at the ends and middles of what is near. */
function cutInto(wire: Wire, wall: SegmentIndex, radius: number): Depth {
  const reach = radius * Math.hypot(1, Math.hypot(wire.mx, wire.my));
  let deepest: Depth = { depth: 0, at: wire };
  const take = (depth: number, at: Point): void => {
    if (depth > deepest.depth) deepest = { depth, at };
  };
  const at = new Float64Array(2);
  wall.tree?.search(wire.x - reach, wire.y - reach, wire.x + reach, wire.y + reach, (i) => {
    for (const along of looks) {
      pointAlong(wall.table, i, along, at);
      const point = { x: num(at, 0), y: num(at, 1) };
      take(reachTowards(wire, point, radius) - distanceTo(wire, point), point);
    }
    return false;
  });
  const foot = footOnWall(wall, wire);
  if (foot && !foot.isCorner) take(supportTowards(wire, foot, radius) - foot.distance, foot);
  return deepest;
}

/** How far the wire stays from the wall's nearest place; null where another part of the path is nearer to that. */
function leftBefore(wire: Wire, wall: SegmentIndex, path: SegmentIndex, radius: number): Depth | null {
  const foot = footOnWall(wall, wire);
  // A sharp corner is as far as its edges make it.
  if (!foot || foot.isCorner) return null;
  const nearest = nearestSegment(path, foot.x, foot.y, foot.distance + tolerance.sameBoundary);
  if (nearest.distance < foot.distance - tolerance.sameBoundary) return null;
  const depth = foot.distance - supportTowards(wire, foot, radius);
  return { depth, at: { x: foot.x, y: foot.y } };
}

/** How far the ellipse reaches square to a wall that lies towards a point. */
function supportTowards(wire: Wire, to: Point, radius: number): number {
  return radius * Math.hypot(1, runTowards(wire, to));
}

/** How far it reaches on the way to a point itself: less, where the wire leans another way. */
function reachTowards(wire: Wire, to: Point, radius: number): number {
  const lean = Math.hypot(1, wire.mx, wire.my);
  return radius / Math.sqrt(1 - (runTowards(wire, to) / lean) ** 2);
}

/** The wire's sideways run towards a point for each mm of height. */
function runTowards(wire: Wire, to: Point): number {
  const distance = distanceTo(wire, to);
  if (distance === 0) return 0;
  return (wire.mx * (to.x - wire.x) + wire.my * (to.y - wire.y)) / distance;
}

const distanceTo = (wire: Wire, to: Point): number => Math.hypot(to.x - wire.x, to.y - wire.y);

/**
 * The wall's nearest place, and whether it is a sharp corner, where the way to it is not square to the wall. In the
 * middle of a fillet, from where all of it is as near, the place that the wire leans towards.
 */
function footOnWall(
  wall: SegmentIndex,
  wire: Wire,
): (Point & { distance: number; isCorner: boolean }) | null {
  const { table } = wall;
  const { x, y } = wire;
  const { segment, distance } = nearestSegment(wall, x, y);
  if (segment < 0) return null;
  const foot = inMiddle(wall, distance, wire) ?? footOn(nearestSite(table, segment, x, y), x, y);
  if (distance === 0) return { ...foot, distance, isCorner: false };
  const along = new Float64Array(2);
  directionAt(table, segment, foot.x, foot.y, along);
  const slant = ((foot.x - x) * num(along, 0) + (foot.y - y) * num(along, 1)) / distance;
  return { ...foot, distance, isCorner: Math.abs(slant) > cornerTurn };
}

/** For a wire in the middle of a fillet, from where all of it is as near: the place it leans towards most; else null. */
function inMiddle({ table, tree }: SegmentIndex, distance: number, { x, y, mx, my }: Wire): Point | null {
  const near = distance + tolerance.sameBoundary;
  const isRound = (i: number): boolean =>
    num(table.radius, i) > 0 &&
    Math.abs(num(table.radius, i) - distance) <= tolerance.sameBoundary &&
    Math.hypot(num(table.cx, i) - x, num(table.cy, i) - y) <= tolerance.sameBoundary;
  const round = tree?.search(x - near, y - near, x + near, y + near, isRound) ?? [];
  const lean = Math.hypot(mx, my);
  if (lean > 0 && round.some((i) => isBesideArc(table, i, x + mx, y + my)))
    return { x: x + (mx / lean) * distance, y: y + (my / lean) * distance };
  const at = new Float64Array(2);
  const places = round.flatMap((i) =>
    [0, 0.5, 1].map((along) => {
      pointAlong(table, i, along, at);
      return { x: num(at, 0), y: num(at, 1) };
    }),
  );
  const towards = (place: Point): number => (place.x - x) * mx + (place.y - y) * my;
  return places.reduce<Point | null>(
    (best, one) => (best && towards(best) >= towards(one) ? best : one),
    null,
  );
}
