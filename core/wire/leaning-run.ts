import type { Chain, Contour, Point, Vertex } from '../geometry/contour';
import { chainLength, contourArea, reversedContour } from '../geometry/contour-measures';
import { directionOf, nearestPosition } from '../geometry/loop-position';
import { tolerance } from '../geometry/tolerance';
import type { CutRun } from '../plan';
import { lowerOf, pairsAlong, pointOfSegment, reversedPairs, upperOf, type TaperChain } from './taper-chain';
import { chordedPairs, leanOf, type ChordWishes } from './taper-chords';
import type { TaperLoop, TaperPair } from './taper-loop';

/** A loop as the taper wants it: counter-clockwise, whatever way it is travelled. */
export const counterClockwise = (loop: Contour): Contour =>
  contourArea(loop) > 0 ? loop : reversedContour(loop);

/**
 * A run along a loop with the wire leaning as the taper of that loop has it. It stands upright where it waits in the
 * waste, and leans into its place along the first stretch of the lead-in; back the same way.
 */
export function leaningRun(run: CutRun, taper: TaperLoop, wishes: ChordWishes): CutRun {
  const cut = leaningCut(run.cut, taper, wishes);
  const [first, last] = [cut[0], cut.at(-1)];
  if (!first || !last) return run;
  const leadIn = leaningLead(run.leadIn, leanOf(first));
  const leadOut = reversedPairs(leaningLead(lowerOf(reversedPairs(upright(run.leadOut))), leanOf(last)));
  return {
    leadIn: lowerOf(leadIn),
    cut: lowerOf(cut),
    leadOut: lowerOf(leadOut),
    wireSide: run.wireSide,
    upper: { leadIn: upperOf(leadIn), cut: upperOf(cut), leadOut: upperOf(leadOut) },
  };
}

/** The pairs of a run's cut, chords included, in the direction of the run. */
function leaningCut(cut: Chain, taper: TaperLoop, wishes: ChordWishes): TaperChain {
  const [start, second, end] = [cut[0], cut[1], cut.at(-1)];
  if (!start || !second || !end) return [];
  const loop = taper.map(({ lower }) => lower);
  const length = chainLength(cut);
  const place = nearestPosition(loop, start);
  if (runsAlong(loop, start, second)) return chordedPairs(pairsAlong(taper, place, length), wishes);
  return reversedPairs(chordedPairs(pairsAlong(taper, nearestPosition(loop, end), length), wishes));
}

/** Whether a run's first segment goes the loop's way: asked in its middle, away from all joints. */
function runsAlong(loop: Contour, from: Vertex, to: Vertex): boolean {
  const way = directionOf(loop, nearestPosition(loop, pointOfSegment(from, to, 0.5)));
  // A chord between points a little to either side of the middle has the segment's direction there.
  const [before, after] = [pointOfSegment(from, to, 0.499), pointOfSegment(from, to, 0.501)];
  return (after.x - before.x) * way.x + (after.y - before.y) * way.y > 0;
}

function leaningLead(lead: Chain, lean: Point): TaperChain {
  const [first, second, ...more] = lead;
  if (!first || !second) return upright(lead);
  const moved = (vertex: Vertex): TaperPair => ({
    lower: vertex,
    upper: { x: vertex.x + lean.x, y: vertex.y + lean.y, bulge: vertex.bulge },
  });
  return [...leaningInto(first, second, lean), ...[second, ...more].map(moved)];
}

/** From upright to the lean along one segment; an arc in short straights, which no control gets wrong. */
function leaningInto(from: Vertex, to: Vertex, lean: Point): TaperPair[] {
  const count = from.bulge === 0 ? 1 : arcSteps;
  return Array.from({ length: count }, (_, k) => {
    const share = k / count;
    const { x, y } = pointOfSegment(from, to, share);
    return { lower: { x, y, bulge: 0 }, upper: { x: x + lean.x * share, y: y + lean.y * share, bulge: 0 } };
  });
}

/** In the waste: how round the way is does not matter. */
const arcSteps = 12;

const upright = (chain: Chain): TaperChain => chain.map((vertex) => ({ lower: vertex, upper: vertex }));

/** The loop with chords as its runs have them. */
export function chordedLoop(taper: TaperLoop, wishes: ChordWishes): TaperLoop {
  const [first] = taper;
  return first ? withoutRests(chordedPairs([...taper, first], wishes).slice(0, -1)) : [];
}

/** Drops stretches that have no length above either. */
function withoutRests(loop: TaperLoop): TaperLoop {
  return loop.filter(({ lower, upper }, i) => {
    const next = loop[(i + 1) % loop.length] as TaperPair;
    const length = Math.hypot(next.lower.x - lower.x, next.lower.y - lower.y);
    return length + Math.hypot(next.upper.x - upper.x, next.upper.y - upper.y) > tolerance.samePoint;
  });
}
