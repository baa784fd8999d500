import type { Chain, Point, Vertex } from '../geometry/contour';
import { arcOf, chainLength, segmentLength } from '../geometry/contour-measures';
import { mergeArcs } from '../geometry/fit-merge';
import { tolerance } from '../geometry/tolerance';
import { chainTail } from '../geometry/chain-tail';
import * as portable from '../geometry/portable-math';

/** From where in the waste the lead-in comes, on which side of the run the wire is, and how far from it. mm. */
export interface OffsetLead {
  readonly waste: Point;
  readonly side: 'left' | 'right';
  readonly offset: number;
}

/**
 * A compensated run that begins a little earlier along its contour, so that it is cut from its first point on; null
 * where there is no room for that.
 *
 * Controls differ in where they put the wire when the offset comes on. One that only touches the programmed point
 * with the wire's edge (LinuxCNC's interpreter does) starts offset·tan(turn / 2) late, and a nib would stay; turn is
 * the angle between the lead-in, and the run. `before` is what lies before the run on the
 * contour, in the run's direction. It begins `wanted` earlier in any case, mm. The first segment is always longer than the late start: else the wire would have
 * to go back along it, and along an arc that is a full turn the wrong way round.
 */
export function earlyRun(run: Chain, before: Chain, lead: OffsetLead, wanted = 0): Chain | null {
  const { offset } = lead;
  const [first] = run;
  const last = before.at(-1);
  if (!first || !last || apart(first, last) > tolerance.samePoint) return null;
  let overlap = wanted;
  let early = overlap > 0 ? joined(chainTail(before, overlap), run) : run;
  // Beginning earlier turns the lead-in, which asks for a little more again: a few rounds settle it.
  for (let round = 0; round < 8; round++) {
    const { late, least, length } = startOf(early, lead);
    overlap = Math.max(overlap, slack * late) + Math.max(0, slack * least - length);
    if (!(overlap <= wanted + mostOverlap * offset && overlap <= chainLength(before))) return null;
    early = joined(chainTail(before, overlap), run);
  }
  const { late, least, length } = startOf(early, lead);
  return late <= overlap && least <= length ? early : null;
}

/** In offsets. More would eat into a short tab. */
const mostOverlap = 3;

/** A program's last decimal must not bring back what was just avoided. */
const slack = 1.01;

/**
 * How far along the run the wire starts, how long the first segment must be at least (the wire also leaves it early
 * where a corner follows), and how long it is. mm, along the contour.
 */
function startOf([first, second, third]: Chain, lead: OffsetLead) {
  if (!first || !second) return { late: Infinity, least: Infinity, length: 0 };
  const wide = lead.offset * stretchOf(first, second, lead);
  const turn = turnBetween(chordAngle(lead.waste, first), startAngle(first, second));
  const late = wide * portable.tan(turn / 2);
  const corner = third ? turnBetween(endAngle(first, second), startAngle(second, third)) : 0;
  return {
    late,
    least: late + wide * portable.tan(corner / 2),
    length: segmentLength(first, second),
  };
}

/** Inside an arc the wire runs on a smaller circle, so the same way is longer on the contour; outside it is shorter. */
function stretchOf(first: Vertex, second: Vertex, { side, offset }: OffsetLead): number {
  if (first.bulge === 0) return 1;
  const { radius } = arcOf(first, second);
  const inside = first.bulge > 0 === (side === 'left');
  const wireRadius = inside ? radius - offset : radius + offset;
  return wireRadius > 0 ? radius / wireRadius : Infinity;
}

/** A chord runs half the arc's angle away from the tangents at its ends: 2·atan(bulge). */
const startAngle = (a: Vertex, b: Point): number => chordAngle(a, b) - 2 * portable.atan(a.bulge);
const endAngle = (a: Vertex, b: Point): number => chordAngle(a, b) + 2 * portable.atan(a.bulge);
const chordAngle = (a: Point, b: Point): number => portable.atan2(b.y - a.y, b.x - a.x);
const turnBetween = (a: number, b: number): number =>
  portable.acos(Math.min(1, Math.max(-1, portable.cos(b - a))));
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Both runs as one; the pieces that meet become one segment where they lie on one line or circle. */
function joined(tail: Chain, run: Chain): Chain {
  const start: readonly Vertex[] = [...tail.slice(0, -1), ...run.slice(0, 2)];
  return [...mergeArcs(start).chain.slice(0, -1), ...run.slice(1)];
}
