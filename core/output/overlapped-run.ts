import type { Chain, Point, Vertex } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import { chainTail } from './chain-tail';

/**
 * A compensated run that begins a little earlier along its contour, so that it is cut from its first point on.
 *
 * Controls differ in where they put the wire when the offset comes on. One that only touches the programmed point
 * with the wire's edge (LinuxCNC's interpreter does) starts offset·tan(turn / 2) late, and a nib would stay; turn is
 * the angle between the lead-in, which comes from `waste`, and the run. `before` is what lies before the run on the
 * contour, in the run's direction; where it does not end at the run's first point the run stays as it is.
 */
export function overlappedRun(run: Chain, before: Chain, waste: Point, offset: number): Chain {
  const [first, second] = run;
  const last = before.at(-1);
  if (!first || !second || !last || apart(last, first) > tolerance.samePoint) return run;
  const turn = turnAt(waste, first, second);
  const overlap = offset * Math.min(mostOverlap, slack * Math.tan(turn / 2));
  const tail = chainTail(before, overlap);
  return [...tail.slice(0, -1), ...run];
}

/** In offsets. Leads that turn more sharply than 127° leave no room to begin earlier still. */
const mostOverlap = 2;

/** Beginning earlier turns the lead-in a little: by about 2° for a lead of 5 mm, which this covers. */
const slack = 1.1;

/** Angle between the lead-in and the start of the run, 0 to π. */
function turnAt(waste: Point, first: Vertex, second: Vertex): number {
  const lead = Math.atan2(first.y - waste.y, first.x - waste.x);
  // A chord runs half the arc's angle away from the tangent at its start: 2·atan(bulge).
  const run = Math.atan2(second.y - first.y, second.x - first.x) - 2 * Math.atan(first.bulge);
  return Math.acos(Math.min(1, Math.max(-1, Math.cos(run - lead))));
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
