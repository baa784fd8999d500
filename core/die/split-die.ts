import type { Box, Chain, Contour, Point, Region, Vertex } from '../geometry/contour';
import { reversedChain, reversedContour } from '../geometry/contour-measures';
import { crossSegments, crossingRoom } from '../geometry/cross-segments';
import { chainBetween } from '../geometry/loop-position';
import { offsetRegion } from '../geometry/offset-region';
import { indexOf, type SegmentIndex } from '../geometry/segment-index';
import { addSegment, emptyTable, tableOfRegion } from '../geometry/segment-table';
import { windingNumber } from '../geometry/winding';
import { ringOf, straight, wheelRadiusOf, type Joint, type Section } from './section';
import { addedPlaces, splitPlaces, type SplitPlace } from './split-places';

export interface DieSplitQuery {
  readonly memberId: string;
  /** The opening that is split, counter-clockwise. */
  readonly opening: Contour;
  /** Other openings of the same block, which no joint may run into. */
  readonly others: Region;
  readonly block: Box;
  /** Corners tighter than this are split, mm. */
  readonly reach: number;
  /** Left for finish grinding on every face, mm. */
  readonly stock: number;
}

export interface DieSplit {
  readonly sections: readonly Section[];
  /** Corners that no joint can reach without running into another opening or joint. */
  readonly unreached: readonly SplitPlace[];
}

/**
 * A die block split through its tight corners: joints run straight from the corners to the block's edge, without
 * meeting an opening or each other, so that each section can be ground open. A single corner gets a second joint on the
 * straight farthest away, since one alone would not part the block. No tight corner: no sections.
 */
export function splitDie(query: DieSplitQuery): DieSplit {
  const places = splitPlaces(query.opening, 'outside', query.reach);
  if (places.length === 0) return { sections: [], unreached: [] };
  const index = indexOf(tableOfRegion([query.opening, ...query.others]));
  const { chosen, unreached } = chooseJoints(places, query.block, index);
  const whole = withSecond(chosen, query, index);
  return { sections: whole.length < 2 ? [] : sectionsBetween(whole, query), unreached };
}

interface PlacedJoint extends Joint {
  readonly place: SplitPlace;
}

function chooseJoints(places: readonly SplitPlace[], block: Box, index: SegmentIndex) {
  const chosen: PlacedJoint[] = [];
  const unreached: SplitPlace[] = [];
  for (const place of places) {
    const joint = candidates(place, block, index).find((own) => chosen.every((other) => !cross(own, other)));
    if (joint) chosen.push(joint);
    else unreached.push(place);
  }
  return { chosen, unreached };
}

function withSecond(
  chosen: readonly PlacedJoint[],
  { opening, block }: DieSplitQuery,
  index: SegmentIndex,
): readonly PlacedJoint[] {
  const [only] = chosen;
  if (!only || chosen.length > 1) return chosen;
  for (const place of addedPlaces(opening, 'outside', only.from)) {
    const joint = candidates(place, block, index).find((own) => !cross(own, only));
    if (joint) return [only, joint].sort(byPosition);
  }
  return chosen;
}

const byPosition = ({ place: a }: PlacedJoint, { place: b }: PlacedJoint): number =>
  a.position.segment - b.position.segment || a.position.along - b.position.along;

/** Joints from a place to the block's edge that meet no opening: along the block's axes before aslant. */
function candidates(place: SplitPlace, block: Box, index: SegmentIndex): readonly PlacedJoint[] {
  return place.directions
    .map((direction) => ({ direction, end: onBox(place.at, direction, block) }))
    .filter(({ end }) => end !== null && isClear(place.at, end, index))
    .sort((a, b) => Number(isAslant(a.direction)) - Number(isAslant(b.direction)))
    .map(({ end }) => ({ from: place.at, to: end as Point, radius: place.radius, place }));
}

const isAslant = ({ x, y }: Point): boolean => Math.min(Math.abs(x), Math.abs(y)) > 1 / 1000;

/** Where a ray from inside a box leaves it. */
function onBox({ x, y }: Point, direction: Point, box: Box): Point | null {
  const limit = (at: number, step: number, low: number, high: number) =>
    step > 0 ? (high - at) / step : step < 0 ? (low - at) / step : Infinity;
  const t = Math.min(limit(x, direction.x, box.minX, box.maxX), limit(y, direction.y, box.minY, box.maxY));
  if (!(t > 0) || t === Infinity) return null;
  // Exactly on the side it leaves through, so that the block's outline passes through it.
  const snap = (value: number, low: number, high: number) =>
    Math.abs(value - low) < near ? low : Math.abs(value - high) < near ? high : value;
  return {
    x: snap(x + t * direction.x, box.minX, box.maxX),
    y: snap(y + t * direction.y, box.minY, box.maxY),
  };
}
const near = 1 / 1_000_000;

/** Whether a joint meets no opening after it has left its own corner. */
function isClear(from: Point, to: Point, index: SegmentIndex): boolean {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const leave = Math.min(leaving / length, 0.5);
  const line = emptyTable(1);
  addSegment(line, from.x + (to.x - from.x) * leave, from.y + (to.y - from.y) * leave, to.x, to.y, 0);
  const out = new Float64Array(crossingRoom);
  for (let i = 0; i < index.table.count; i++) {
    if (crossSegments(line, 0, index.table, i, out) > 0) return false;
  }
  return true;
}
/** mm of a joint that belong to its own corner. */
const leaving = 1 / 1000;

function cross(a: Joint, b: Joint): boolean {
  const lines = emptyTable(2);
  addSegment(lines, a.from.x, a.from.y, a.to.x, a.to.y, 0);
  addSegment(lines, b.from.x, b.from.y, b.to.x, b.to.y, 0);
  return crossSegments(lines, 0, lines, 1, new Float64Array(crossingRoom)) > 0;
}

/**
 * Sections between neighbouring joints: back along the opening, out along the first joint, round the block's edge
 * counter-clockwise, in along the second.
 */
function sectionsBetween(joints: readonly PlacedJoint[], query: DieSplitQuery): readonly Section[] {
  return joints.map((first, i) => {
    const second = joints[(i + 1) % joints.length] as PlacedJoint;
    const working = reversedChain(chainBetween(query.opening, first.place.position, second.place.position));
    const outer = ringOf([
      working,
      straight(first.from, first.to),
      alongBox(query.block, first.to, second.to),
      straight(second.to, second.from),
    ]);
    const holes = query.others.filter((other) => {
      const at = other[0] as Vertex;
      return windingNumber(outer, at.x, at.y) !== 0;
    });
    const outline = [outer, ...holes.map(reversedContour)];
    const ends: Joint[] = [first, second].map(({ from, to, radius }) => ({ from, to, radius }));
    return {
      id: `${query.memberId}-${i + 1}`,
      memberId: query.memberId,
      outline,
      rough: offsetRegion(outline, query.stock),
      working: [working],
      joints: ends,
      wheelRadius: wheelRadiusOf([working], ends),
    };
  });
}

/** The box's outline counter-clockwise from one of its points to another. */
function alongBox(box: Box, from: Point, to: Point): Chain {
  const corners = [
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
    { x: box.minX, y: box.minY },
  ];
  const start = alongSides(box, from);
  const whole = 2 * (box.maxX - box.minX + box.maxY - box.minY);
  const way = (p: Point) => (alongSides(box, p) - start + whole) % whole;
  const between = corners.filter((corner) => way(corner) > near && way(corner) < way(to) - near);
  between.sort((a, b) => way(a) - way(b));
  return [from, ...between, to].map(({ x, y }) => ({ x, y, bulge: 0 }));
}

/** Way along the box's outline from its lower left corner, counter-clockwise. */
function alongSides(box: Box, { x, y }: Point): number {
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  if (y <= box.minY) return x - box.minX;
  if (x >= box.maxX) return width + (y - box.minY);
  if (y >= box.maxY) return width + height + (box.maxX - x);
  return 2 * width + height + (box.maxY - y);
}
