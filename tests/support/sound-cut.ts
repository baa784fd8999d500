import { expect } from 'vitest';
import type { Chain, Contour, Point, Region, Vertex } from '../../core/geometry/contour';
import { chainLength, contourLength } from '../../core/geometry/contour-measures';
import { windingNumber } from '../../core/geometry/winding';
import type { Cut, CutRun, PassPath } from '../../core/plan';
import { bruteDistance, pointsAlong } from './contour-facts';

/**
 * What holds for every cut, whatever the contour and the choices. Distances by brute force, nothing shared with the
 * code under test.
 */
export function expectSound(cut: Cut, designed: Region, clearance: number, overlap: number): void {
  expectConnected(cut);
  for (const pass of cut.passes) {
    expectCovered(cut, pass, overlap);
    const runs = [...pass.main, ...pass.tabs];
    for (const { leadIn, cut: along, leadOut } of runs) {
      for (const chain of [leadIn, along, leadOut]) {
        for (const { x, y } of pointsOf(chain)) {
          expect(bruteDistance(designed, x, y)).toBeGreaterThan(pass.offset - 1e-6);
        }
      }
    }
  }
  const rough = cut.passes[0]?.loop ?? [];
  for (const start of cut.starts) {
    if (!start || start.kind === 'edge') continue;
    expect(windingNumber(rough, start.x, start.y) !== 0).toBe(cut.waste === 'inside');
    const room = bruteDistance([rough], start.x, start.y) - start.diameter / 2;
    expect(room).toBeGreaterThan(clearance - 1e-5);
  }
}

/** The runs of a threading as they are cut, one after the other. */
export function runsOf(cut: Cut, threading: number): readonly CutRun[] {
  return (cut.threadings[threading]?.runs ?? []).map(({ pass: number, part, index }) => {
    const pass = cut.passes.find(({ pass }) => pass === number);
    const run = pass?.[part][index];
    if (!run) throw new Error('a threading names a run that is not there');
    return run;
  });
}

/** Every run is cut once; a threading begins in its hole, and each run where the last one ended. */
function expectConnected(cut: Cut): void {
  const seen = new Set<CutRun>();
  cut.threadings.forEach((threading, number) => {
    const start = cut.starts[threading.start];
    let at: Point | undefined = start ?? undefined;
    for (const run of runsOf(cut, number)) {
      expect(seen.has(run)).toBe(false);
      seen.add(run);
      if (at) expect(near(at, run.leadIn[0])).toBe(true);
      expect(near(run.leadIn.at(-1), run.cut[0])).toBe(true);
      expect(near(run.cut.at(-1), run.leadOut[0])).toBe(true);
      at = run.leadOut.at(-1);
    }
  });
  expect(seen.size).toBe(cut.passes.reduce((sum, { main, tabs }) => sum + main.length + tabs.length, 0));
}

/** The whole loop is cut in every pass, and no part of it twice but the overlaps. */
function expectCovered(cut: Cut, { main, tabs, loop, pass }: PassPath, overlap: number): void {
  const isRound = tabs.length === 0;
  const overlaps = isRound ? 1 : 2 * cut.tabs.length;
  const length = [...main, ...tabs].reduce((sum, run) => sum + chainLength(run.cut), 0);
  expect(length).toBeCloseTo(contourLength(loop) + overlaps * overlap, 7);
  expect(main).toHaveLength(isRound ? 1 : cut.tabs.length);
  if (!isRound) expect(tabs).toHaveLength(cut.tabs.length);
  const chains = [...main, ...tabs].map((run) => run.cut);
  for (const { x, y } of pointsAlong(loop, 3)) {
    const nearest = Math.min(...chains.map((chain) => chainDistance(chain, x, y)));
    expect(nearest, `pass ${pass}`).toBeLessThan(1e-7);
  }
}

/** From a point to an open chain: to the closed one, but for the segment that closes it. */
function chainDistance(chain: Chain, x: number, y: number): number {
  let best = Infinity;
  for (let i = 0; i + 1 < chain.length; i++) {
    const [from, to] = [chain[i] as Vertex, chain[i + 1] as Vertex];
    // There and back along one segment bounds nothing but that segment.
    const lens: Contour = [from, { x: to.x, y: to.y, bulge: -from.bulge }];
    best = Math.min(best, bruteDistance([lens], x, y));
  }
  return best;
}

function pointsOf(chain: Chain): readonly Point[] {
  const last = chain.at(-1);
  if (!last) return [];
  const closed = pointsAlong(chain, 5);
  return [...closed.slice(0, 5 * (chain.length - 1)), last];
}

export const near = (a: Point | undefined, b: Point | undefined): boolean =>
  a !== undefined && b !== undefined && Math.hypot(a.x - b.x, a.y - b.y) < 1e-9;
