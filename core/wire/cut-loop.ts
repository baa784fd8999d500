import type { Chain, Contour, Point } from '../geometry/contour';
import { contourArea, reversedChain } from '../geometry/contour-measures';
import { chainBetween, nearestPosition } from '../geometry/loop-position';
import type { CutRun, PassRuns } from '../plan';
import type { Lead, PassLoops } from './cut-path';

/**
 * The runs of every pass over one loop. The wire never travels through uncut stock between passes: the rough cut runs
 * from the start hole forwards to the tab, the next pass back the same way, and so on in turn; after the stop the
 * passes over the tab go on from the side where the last one ended, again in turn. Beside both ends of the tab the
 * wire steps back straight into the waste, where a control may switch its offset on and off.
 */
export function cutLoop(
  passes: readonly PassLoops[],
  lead: Lead,
  along: 'path' | 'contour',
  waste: 'inside' | 'outside',
): readonly PassRuns[] {
  const hasTab = lead.tabLength > 0;
  return passes.map((pass, k) => {
    const loop = along === 'path' ? pass.loop : pass.contour;
    if (!loop) return { main: [], tabs: [] };
    const forwardsSide = contourArea(loop) > 0 === (waste === 'inside') ? 'left' : 'right';
    const ends = endsOn(loop, lead);
    const forwards = k % 2 === 0;
    const begin = k === 0 && lead.start ? lead.start : lead.besideBegin;
    const main = runOf(ends.main, begin, lead.besideEnd, forwards, forwardsSide);
    // Forwards over the tab means from the main run's end to its begin.
    const tabForwards = (passes.length + k) % 2 === 1;
    const tab = runOf(ends.tab, lead.besideEnd, lead.besideBegin, tabForwards, forwardsSide);
    return { main: [main], tabs: hasTab ? [tab] : [] };
  });
}

type Side = CutRun['wireSide'];
const otherSide = { left: 'right', right: 'left' } as const;

function endsOn(loop: Contour, lead: Lead): { main: Chain; tab: Chain } {
  const begin = nearestPosition(loop, lead.begin);
  const end = nearestPosition(loop, lead.end);
  return { main: chainBetween(loop, begin, end), tab: chainBetween(loop, end, begin) };
}

function runOf(chain: Chain, before: Point, after: Point, forwards: boolean, forwardsSide: Side): CutRun {
  const cut = forwards ? chain : reversedChain(chain);
  const [from, to] = forwards ? [before, after] : [after, before];
  return {
    leadIn: straight(from, cut[0]),
    cut,
    leadOut: straight(cut.at(-1), to),
    wireSide: forwards ? forwardsSide : otherSide[forwardsSide],
  };
}

function straight(from: Point | undefined, to: Point | undefined): Chain {
  if (!from || !to) return [];
  return [
    { x: from.x, y: from.y, bulge: 0 },
    { x: to.x, y: to.y, bulge: 0 },
  ];
}
