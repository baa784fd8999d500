import type { Contour, Point, Region } from '../geometry/contour';
import { chainBetween, nearestPosition, pointAt, type LoopPosition } from '../geometry/loop-position';
import { offsetRegion } from '../geometry/offset-region';
import { crossSegments, crossingRoom } from '../geometry/cross-segments';
import { addSegment, emptyTable, num, tableOfRegion } from '../geometry/segment-table';
import { ringOf, straight, wheelRadiusOf, type Joint, type Section } from './section';
import { splitPlaces, type SplitPlace } from './split-places';

export interface PunchSplitQuery {
  readonly memberId: string;
  /** The punch, counter-clockwise, without holes. */
  readonly contour: Contour;
  readonly reach: number;
  readonly stock: number;
}

/**
 * A punch split through its tight inside corners, each along the shorter extension of the edges that meet there, so
 * that no section keeps one. Two corners on one line are split at once. No tight corner: no sections.
 */
export function splitPunch(query: PunchSplitQuery): readonly Section[] {
  const tight = splitPlaces(query.contour, 'inside', query.reach);
  if (tight.length === 0) return [];
  let pieces: readonly Piece[] = [{ contour: query.contour, joints: [] }];
  // Every cut removes at least the corner it goes through; a bound for odd contours all the same.
  for (let round = 0; round < tight.length; round++) {
    const next = pieces.findIndex((piece) => tightPlaces(piece, query.reach).length > 0);
    const piece = pieces[next];
    if (!piece) break;
    const parts = cutPiece(piece, query.reach);
    if (!parts) break;
    pieces = [...pieces.slice(0, next), ...parts, ...pieces.slice(next + 1)];
  }
  return pieces.length < 2 ? [] : pieces.map((piece, i) => sectionOf(piece, i, query));
}

interface Piece {
  readonly contour: Contour;
  readonly joints: readonly Joint[];
}

interface Cut {
  readonly from: LoopPosition;
  readonly to: LoopPosition;
  readonly joint: Joint;
}

/** The piece's tight corners; a fillet that a joint has opened is none any more. */
function tightPlaces({ contour, joints }: Piece, reach: number): readonly SplitPlace[] {
  return splitPlaces(contour, 'inside', reach).filter(({ kind, position: { segment } }) => {
    const ends = [0, 1].map((along) => pointAt(contour, { segment, along }));
    return kind === 'corner' || !joints.some(({ from }) => ends.some((end) => apart(end, from) < near));
  });
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

function cutPiece(piece: Piece, reach: number): readonly Piece[] | null {
  const { contour, joints } = piece;
  const cuts = tightPlaces(piece, reach)
    .flatMap((place) => place.directions.flatMap((direction) => cutAlong(contour, place, direction) ?? []))
    .sort((a, b) => lengthOf(a.joint) - lengthOf(b.joint));
  const [cut] = cuts;
  if (!cut) return null;
  const { from, to, joint } = cut;
  const first = ringOf([chainBetween(contour, from, to), straight(joint.to, joint.from)]);
  const second = ringOf([chainBetween(contour, to, from), straight(joint.from, joint.to)]);
  return [first, second].map((part) => ({
    contour: part,
    joints: [...joints.filter((other) => liesOn(part, other)), joint],
  }));
}

const lengthOf = ({ from, to }: Joint): number => apart(from, to);

/** Whether a joint is still a part of a contour. */
const liesOn = (contour: Contour, { from, to }: Joint): boolean => {
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return nearestPosition(contour, middle).distance < near;
};

/** From a place straight through the steel to the contour's other side; null where it goes nowhere. */
function cutAlong(contour: Contour, place: SplitPlace, direction: Point): Cut | null {
  const table = tableOfRegion([contour]);
  const far = { x: place.at.x + direction.x * farOff, y: place.at.y + direction.y * farOff };
  const line = emptyTable(1);
  const start = { x: place.at.x + direction.x * leaving, y: place.at.y + direction.y * leaving };
  addSegment(line, start.x, start.y, far.x, far.y, 0);
  const out = new Float64Array(crossingRoom);
  let nearest = Infinity;
  let hit: Point | null = null;
  for (let i = 0; i < table.count; i++) {
    const count = crossSegments(line, 0, table, i, out);
    for (let k = 0; k < count; k++) {
      const at = { x: num(out, 2 * k), y: num(out, 2 * k + 1) };
      const distance = apart(at, place.at);
      if (distance >= nearest || distance < 2 * leaving) continue;
      nearest = distance;
      hit = at;
    }
  }
  if (!hit) return null;
  const to = atVertex(contour, nearestPosition(contour, hit));
  return {
    from: place.position,
    to,
    joint: { from: place.at, to: pointAt(contour, to), radius: place.radius },
  };
}

/** Longer than any punch, mm; and the first part of a cut, which belongs to its own corner. */
const farOff = 100_000;
const leaving = 1 / 1000;
const near = 1 / 1_000_000;

/** A cut that ends within a hair of a corner ends at it. */
function atVertex(contour: Contour, position: LoopPosition): LoopPosition {
  const at = pointAt(contour, position);
  const vertex = contour.findIndex((corner) => apart(corner, at) < near);
  return vertex < 0 ? position : { segment: vertex, along: 0 };
}

function sectionOf({ contour, joints }: Piece, index: number, query: PunchSplitQuery): Section {
  const outline: Region = [contour];
  const working = contour.flatMap((from, i) => {
    const to = contour[(i + 1) % contour.length];
    if (!to) return [];
    const middle = pointAt(contour, { segment: i, along: 0.5 });
    const isJoint = joints.some(
      (joint) => nearestPosition(straight(joint.from, joint.to), middle).distance < near,
    );
    return isJoint ? [] : [[from, { ...to, bulge: 0 }]];
  });
  return {
    id: `${query.memberId}-${index + 1}`,
    memberId: query.memberId,
    outline,
    rough: offsetRegion(outline, query.stock),
    working,
    joints,
    wheelRadius: wheelRadiusOf(working, joints),
  };
}
