import { describe, expect, it } from 'vitest';
import { newLead } from '../../../core/cut-settings';
import type { Chain, Point, Region } from '../../../core/geometry/contour';
import { chainLength, contourLength } from '../../../core/geometry/contour-measures';
import { windingNumber } from '../../../core/geometry/winding';
import type { Cut, CutRun, MemberRole } from '../../../core/plan';
import { passOffsets } from '../../../core/wire/pass-offsets';
import type { CutWishes } from '../../../core/wire/cut-wishes';
import { planCuts } from '../../../core/wire/plan-cuts';
import { openSite } from '../../../core/wire/site';
import { bruteDistance } from '../../support/contour-facts';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import { circle, polygon, roundedRectangle, square } from '../../support/shapes';

const wishes: CutWishes = {
  ...newLead,
  tabRule: 'typed',
  slug: 'kept',
  overlap: 0,
  height: 25,
  wireDiameter: 0.25,
  sequence: 'part by part',
  lastDecimal: 0.00001,
};
const passes = [
  { sparkGap: 0.025, stockLeft: 0.015, feed: 4 },
  { sparkGap: 0.022, stockLeft: 0.004, feed: 6 },
  { sparkGap: 0.02, stockLeft: 0, feed: 8 },
];

function cutsOf(designed: Region, role: MemberRole, changes: Partial<CutWishes> = {}) {
  const offsets = passOffsets(0.25, passes);
  if (!offsets.ok) throw new Error(offsets.problem.what);
  return planCuts('m', designed, role, offsets.value, { ...wishes, ...changes }, openSite, {});
}

const near = (a: Point | undefined, b: Point | undefined): boolean =>
  a !== undefined && b !== undefined && Math.hypot(a.x - b.x, a.y - b.y) < 1e-9;
const first = (chain: Chain) => chain[0];
const last = (chain: Chain) => chain.at(-1);
const whole = ({ leadIn, cut, leadOut }: CutRun): Chain => [...leadIn, ...cut, ...leadOut];

/** What holds for every cut, whatever the contour. */
function expectSound(cut: Cut, designed: Region, waste: 'inside' | 'outside'): void {
  expect(cut.waste).toBe(waste);
  const [start] = cut.starts;
  expect(near(start ?? undefined, first(cut.passes[0]?.main[0]?.leadIn ?? []))).toBe(true);
  let at: Point | undefined;
  for (const { main: mains, tabs, loop, offset } of cut.passes) {
    const [main] = mains as [CutRun];
    const [tab] = tabs;
    // The wire waits where the pass before left it (the rough cut comes from the start hole).
    if (at) expect(near(at, first(main.leadIn))).toBe(true);
    expect(near(last(main.leadIn), first(main.cut))).toBe(true);
    expect(near(last(main.cut), first(main.leadOut))).toBe(true);
    at = last(main.leadOut);
    const tabLength = tab ? chainLength(tab.cut) : 0;
    expect(chainLength(main.cut) + tabLength).toBeCloseTo(contourLength(loop), 9);
    for (const point of whole(main))
      expect(bruteDistance(designed, point.x, point.y)).toBeGreaterThan(offset - 1e-6);
  }
  for (const tab of cut.passes.flatMap(({ tabs }) => tabs)) {
    expect(near(at, first(tab.leadIn))).toBe(true);
    at = last(tab.leadOut);
  }
  if (start) {
    const inside = windingNumber(cut.passes[0]?.loop ?? [], start.x, start.y) !== 0;
    expect(inside).toBe(waste === 'inside');
    const room = bruteDistance([cut.passes[0]?.loop ?? []], start.x, start.y);
    expect(room).toBeGreaterThan(start.diameter / 2 + wishes.holeClearance - 1e-5);
  }
}

describe('planCuts', () => {
  it('square die: hole inside, lead-in square on the middle of a side, tab centred', () => {
    const [planned] = cutsOf([square(20)], 'die');
    expectSound(planned?.cut as Cut, [square(20)], 'inside');
    expect(planned?.cut.starts[0]?.diameter).toBe(1);
    expect(planned?.cut.tabs[0]?.length).toBe(2);
    const rough = planned?.cut.passes[0];
    expect(chainLength(rough?.main[0]?.leadIn ?? [])).toBeCloseTo(3, 9);
    expect(chainLength(rough?.tabs[0]?.cut ?? [])).toBeCloseTo(2, 9);
  });

  it('punch: hole in the block around it', () => {
    const [planned] = cutsOf([square(20)], 'punch');
    expectSound(planned?.cut as Cut, [square(20)], 'outside');
  });

  it('passes run there and back; the tab goes on from where the last one ended', () => {
    const [planned] = cutsOf([square(20)], 'die');
    const sides = planned?.cut.passes.map(({ main, tabs }) => [main[0]?.wireSide, tabs[0]?.wireSide]);
    expect(sides).toEqual([
      ['left', 'left'],
      ['right', 'right'],
      ['left', 'left'],
    ]);
  });

  it('the other direction swaps the sides, and a punch has them the other way round', () => {
    const side = (role: MemberRole, direction: CutWishes['direction']) =>
      cutsOf([square(20)], role, { direction })[0]?.cut.passes[0]?.main[0]?.wireSide;
    expect(side('die', 'counter-clockwise')).toBe('left');
    expect(side('die', 'clockwise')).toBe('right');
    expect(side('punch', 'counter-clockwise')).toBe('right');
    expect(side('punch', 'clockwise')).toBe('left');
  });

  it('without a tab the whole loop is one run', () => {
    const [planned] = cutsOf([roundedRectangle(20, 10, 1)], 'die', { tabLength: 0 });
    expect(planned?.cut.tabs).toEqual([]);
    expect(planned?.cut.passes.every(({ tabs }) => tabs.length === 0)).toBe(true);
    expectSound(planned?.cut as Cut, [roundedRectangle(20, 10, 1)], 'inside');
  });

  it('a circle, where no straight is to be had', () => {
    const [planned] = cutsOf([circle(2)], 'die');
    expectSound(planned?.cut as Cut, [circle(2)], 'inside');
  });

  it('a neck that only splits the path gives two cuts with a hole each', () => {
    const dumbbell = polygon(
      [0, 0],
      [10, 0],
      [10, 4.9],
      [14, 4.9],
      [14, 0],
      [24, 0],
      [24, 10],
      [14, 10],
      [14, 5.1],
      [10, 5.1],
      [10, 10],
      [0, 10],
    );
    const planned = cutsOf([dumbbell], 'die');
    expect(planned).toHaveLength(2);
    for (const { cut } of planned) expectSound(cut, [dumbbell], 'inside');
  });

  it('an enclosed pocket of a punch is cut from inside', () => {
    const keyhole = polygon(
      [0, 0],
      [20, 0],
      [20, 20],
      [10.1, 20],
      [10.1, 15],
      [15, 15],
      [15, 5],
      [5, 5],
      [5, 15],
      [9.9, 15],
      [9.9, 20],
      [0, 20],
    );
    const wastes = cutsOf([keyhole], 'punch').map(({ cut }) => {
      expectSound(cut, [keyhole], cut.waste);
      return cut.waste;
    });
    expect(wastes).toEqual(['outside', 'inside']);
  });

  it('nothing for a wire that does not go in', () => {
    expect(cutsOf([circle(0.1)], 'die')).toEqual([]);
  });

  it('a hole that does not fit shrinks, and is null where none fits', () => {
    expect(cutsOf([circle(0.9)], 'die')[0]?.cut.starts[0]?.diameter).toBe(0.8);
    expect(cutsOf([circle(0.3)], 'die')[0]?.cut.starts[0]).toBeNull();
  });

  it('holds for random contours of every family', () => {
    for (const family of Object.keys(families)) {
      for (let seed = 1; seed <= 12; seed++) {
        const designed = [randomContour(family, seeded(seed * 977))];
        for (const role of ['die', 'punch'] as const) {
          for (const { cut } of cutsOf(designed, role))
            if (cut.starts[0]) expectSound(cut, designed, cut.waste);
        }
      }
    }
  });
});
