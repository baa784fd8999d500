import type { Contour, Point, Vertex } from '../geometry/contour';
import { contourLength, segmentLength } from '../geometry/contour-measures';
import { nearestPosition, pointAt, positionAfter } from '../geometry/loop-position';
import type { Cut, CutRun, PassPath, StartHole } from '../plan';
import { buildCut } from './build-cut';
import type { CutLayout, RunEnd } from './cut-layout';
import { orderOfWork } from './order-of-work';

export interface LeaningCutQuery {
  readonly id: string;
  /** The wire's centre in the plane of the die's edge, counter-clockwise. */
  readonly loop: Contour;
  /** Of the wire's centre from the die, mm; mm/min. */
  readonly offset: number;
  readonly feed: number;
  /** Wanted length of the tab that holds the punch, mm. */
  readonly tabLength: number;
  /** Greatest width of the hole on the path, mm. */
  readonly kerf: number;
}

/**
 * The one cut that parts a punch from its die, still upright: it begins on the path itself, in the middle of its
 * longest segment, since there is waste on neither side, runs round to the tab, stops, and cuts that. No leads: the
 * wire must not leave its kerf.
 */
export function leaningCut(query: LeaningCutQuery): { readonly cut: Cut; readonly layout: CutLayout } {
  const { id, loop, offset, feed, kerf } = query;
  const whole = contourLength(loop);
  const tabLength = Math.min(query.tabLength, tabShare * whole);
  const begin = nearestPosition(loop, middleOfLongest(loop));
  const end = positionAfter(loop, begin, whole - tabLength);
  const [from, to] = [pointAt(loop, begin), pointAt(loop, end)];
  const start: StartHole = { ...from, diameter: kerf, kind: 'drilled' };
  const layout: CutLayout = {
    stretches: [{ start, begin: endAt(from), end: endAt(to) }],
    tabs: [{ from: to, to: from, length: tabLength }],
    wantedTabs: [tabLength],
    closing: endAt(from),
    overlap: 0,
    troubles: [],
  };
  const order = orderOfWork({ tabs: 1, passes: 1, slug: 'kept', sequence: 'part by part' });
  const pass = { pass: 0, offset, feed, loop, contour: null };
  const cut = buildCut({ id, waste: 'inside', slug: 'kept' }, [pass], layout, order);
  return { cut: { ...cut, passes: cut.passes.map(withoutLeads) }, layout };
}

/** A tab longer than this share of a small contour would leave too little to hold it by. */
const tabShare = 0.05;

const endAt = (at: Point): RunEnd => ({ at, wait: at, arcRadius: 0 });

const withoutLeads = (pass: PassPath): PassPath => ({
  ...pass,
  main: pass.main.map(bare),
  tabs: pass.tabs.map(bare),
});

const bare = (run: CutRun): CutRun => ({
  ...run,
  leadIn: run.cut.slice(0, 1),
  leadOut: run.cut.slice(-1),
});

function middleOfLongest(loop: Contour): Point {
  let best: Point = { x: 0, y: 0 };
  let longest = -1;
  loop.forEach((from, i) => {
    const to = loop[(i + 1) % loop.length] as Vertex;
    const length = segmentLength(from, to);
    if (length <= longest) return;
    longest = length;
    // The middle of an arc lies off its chord by half the chord times the bulge.
    best = {
      x: (from.x + to.x) / 2 + ((to.y - from.y) / 2) * from.bulge,
      y: (from.y + to.y) / 2 - ((to.x - from.x) / 2) * from.bulge,
    };
  });
  return best;
}
