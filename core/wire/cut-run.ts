import type { Chain, Contour, Point, Vertex } from '../geometry/contour';
import { contourArea, reversedChain } from '../geometry/contour-measures';
import { chainBetween, nearestPosition, positionAfter, type LoopPosition } from '../geometry/loop-position';
import { tolerance } from '../geometry/tolerance';
import type { CutRun, StartHole } from '../plan';
import type { CutLayout, RunEnd } from './cut-layout';
import type { OrderedRun } from './order-of-work';
import { leadTo, type RunSide } from './run-end';

/** The loop that a pass's runs are laid along: the wire's own, or the contour that a control offsets by itself. */
export interface RunLoop {
  readonly loop: Contour;
  readonly waste: 'inside' | 'outside';
  /** How much farther from the waste the loop lies than the wire's centre, mm; 0 for the wire's own. */
  readonly outer: number;
}

/** How far a run goes over what was cut before it, mm, at its begin and its end in the job's direction. */
export interface Overlaps {
  readonly begin: number;
  readonly end: number;
}

/** Over a tab at both ends; all round where the loop closes; a stretch overlaps nothing. */
export function overlapsOf({ part, isRound }: OrderedRun, { overlap }: CutLayout): Overlaps {
  return { begin: part === 'tabs' ? overlap : 0, end: part === 'tabs' || isRound ? overlap : 0 };
}

/**
 * One ordered run along a loop. Its ends lie beside the layout's, `overlaps` beyond them. `start`: the hole that the
 * wire was just threaded through; null where it waits since the run before.
 */
export function cutRun(
  run: OrderedRun,
  layout: CutLayout,
  on: RunLoop,
  overlaps: Overlaps,
  start: StartHole | null,
): CutRun {
  const insideIsLeft = contourArea(on.loop) > 0;
  const wasteSign = insideIsLeft === (on.waste === 'inside') ? 1 : -1;
  const { cut, begin, end } = forwardCut(run, layout, on.loop, overlaps);
  // Over a tab the wire comes straight: an arc there would curve over what is finished.
  const isStraight = run.part === 'tabs';
  const lead = ({ at, place }: PlacedEnd, side: RunSide): Chain =>
    leadTo(isStraight ? { ...at, arcRadius: 0 } : at, on.loop, place, side, wasteSign, on.outer);
  const leads = { begin: lead(begin, 'begin'), end: lead(end, 'end') };
  const [from, to] = run.forwards ? [leads.begin, leads.end] : [leads.end, leads.begin];
  return {
    leadIn: start ? threaded(start, from) : from,
    cut: run.forwards ? cut : reversedChain(cut),
    leadOut: reversedChain(to),
    wireSide: wasteSign > 0 === run.forwards ? 'left' : 'right',
  };
}

/** Where a run begins or ends on its own loop, and the layout's end that it comes from or goes to. */
interface PlacedEnd {
  readonly at: RunEnd;
  readonly place: LoopPosition;
}

function forwardCut(
  { part, index, isRound }: OrderedRun,
  { stretches, closing }: CutLayout,
  loop: Contour,
  overlaps: Overlaps,
) {
  const own = stretches[index] as CutLayout['stretches'][number];
  const next = stretches[(index + 1) % stretches.length] as typeof own;
  const place = (end: RunEnd, by: number): LoopPosition => {
    const beside = nearestPosition(loop, end.at);
    return by === 0 ? beside : positionAfter(loop, beside, by);
  };
  if (isRound) {
    const begin = place(own.begin, 0);
    const end = place(own.begin, overlaps.end);
    const round = chainBetween(loop, begin, begin);
    return {
      cut: overlaps.end === 0 ? round : joined(round, chainBetween(loop, begin, end)),
      begin: { at: own.begin, place: begin },
      end: { at: closing, place: end },
    };
  }
  const [first, last] = part === 'tabs' ? [own.end, next.begin] : [own.begin, own.end];
  const begin = { at: first, place: place(first, -overlaps.begin) };
  const end = { at: last, place: place(last, overlaps.end) };
  return { cut: chainBetween(loop, begin.place, end.place), begin, end };
}

/** Two chains that meet as one; the run goes straight on where they do. */
function joined(first: Chain, second: Chain): Chain {
  return [...first.slice(0, -1), ...second];
}

/** From the hole to where the wire waits, and on; one straight where the three lie on a line. */
function threaded({ x, y }: Point, lead: Chain): Chain {
  const [wait, next] = lead;
  const hole: Vertex = { x, y, bulge: 0 };
  if (!wait || apart(hole, wait) <= tolerance.samePoint) return lead;
  return next && wait.bulge === 0 && isOnLine(hole, wait, next) ? [hole, ...lead.slice(1)] : [hole, ...lead];
}

function isOnLine(a: Point, b: Point, c: Point): boolean {
  const cross = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  const isBetween = (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) > 0;
  return isBetween && Math.abs(cross) <= tolerance.onCurve * apart(a, c);
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
