import { describe, expect, it } from 'vitest';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import type { Chain, Vertex } from '../../../core/geometry/contour';
import { chainLength, contourLength } from '../../../core/geometry/contour-measures';
import { cutOf, cutsOf } from '../../support/planned-cut';
import { circle, roundedRectangle, square } from '../../support/shapes';

const tabCuts = (planned: ReturnType<typeof cutOf>): readonly Chain[] =>
  planned.cut.passes[0]?.tabs.map(({ cut }) => cut) ?? [];

/** The largest turn at a vertex within a chain, radians. */
function sharpest(chain: Chain): number {
  let most = 0;
  for (let i = 1; i + 1 < chain.length; i++) {
    const [a, b, c] = chain.slice(i - 1, i + 2) as [Vertex, Vertex, Vertex];
    const arriving = Math.atan2(b.y - a.y, b.x - a.x) + 2 * Math.atan(a.bulge);
    const leaving = Math.atan2(c.y - b.y, c.x - b.x) - 2 * Math.atan(b.bulge);
    most = Math.max(most, Math.abs(Math.atan2(Math.sin(leaving - arriving), Math.cos(leaving - arriving))));
  }
  return most;
}

describe('tabs', () => {
  it('one, in the middle of the longest straight, with the length asked for', () => {
    const planned = cutOf([roundedRectangle(30, 10, 2)], 'punch');
    expect(planned.cut.tabs).toHaveLength(1);
    expect(chainLength(tabCuts(planned)[0] ?? [])).toBeCloseTo(2, 9);
    const [tab] = planned.cut.tabs;
    expect(((tab?.from.x ?? 0) + (tab?.to.x ?? 0)) / 2).toBeCloseTo(15, 9);
  });

  it('several, spread around the piece, each on a straight, each with a hole of its own', () => {
    for (const count of [2, 3, 4]) {
      const planned = cutOf([square(20)], 'punch', { choice: { tabs: count } });
      expect(planned.cut.tabs).toHaveLength(count);
      expect(planned.cut.starts.filter((start) => start !== null)).toHaveLength(count);
      for (const chain of tabCuts(planned)) {
        expect(chain).toHaveLength(2);
        expect(chainLength(chain)).toBeCloseTo(2, 9);
      }
      // Stretches about as long as one another.
      const stretches = planned.cut.passes[0]?.main.map(({ cut }) => chainLength(cut)) ?? [];
      expect(Math.max(...stretches)).toBeLessThan(2.2 * Math.min(...stretches));
    }
  });

  it('on a circle too, where no straight is to be had', () => {
    const planned = cutOf([circle(8)], 'die', { choice: { tabs: 3 } });
    const stretches = planned.cut.passes[0]?.main.map(({ cut }) => chainLength(cut)) ?? [];
    for (const length of stretches) expect(length).toBeCloseTo((2 * Math.PI * (8 - 0.165)) / 3 - 2, 6);
  });

  it('never lie over a corner where anything else has room', () => {
    let tabs = 0;
    let smooth = 0;
    for (const family of Object.keys(families)) {
      for (let seed = 1; seed <= 15; seed++) {
        const designed = [randomContour(family, seeded(seed * 331))];
        for (const role of ['die', 'punch'] as const) {
          const [planned] = cutsOf(designed, role, { wishes: { tabLength: 1 } });
          if (!planned || planned.cut.starts[0] === null) continue;
          for (const chain of tabCuts(planned)) {
            const length = chainLength(chain);
            tabs++;
            // Corners shorten a tab; where less than 0.2 mm would stay anywhere, it lies over one.
            if (sharpest(chain) <= Math.PI / 180) smooth++;
            else expect(length).toBeCloseTo(1, 9);
          }
        }
      }
    }
    expect(tabs).toBeGreaterThan(100);
    expect(smooth).toBeGreaterThan(0.98 * tabs);
  });

  it('are moved by hand, keep to their order, and say so where they cannot', () => {
    const places = [
      { x: 10, y: -1 },
      { x: 21, y: 15 },
    ];
    const stretches = places.map((place) => ({ place }));
    const moved = cutOf([square(20)], 'punch', { choice: { tabs: 2, stretches } });
    expect(moved.layout.troubles).toEqual([]);
    expect(moved.cut.tabs[0]?.from.y).toBeCloseTo(14, 9);
    expect(moved.cut.tabs[1]?.from.x).toBeCloseTo(9, 9);
    // On top of the first one.
    const onTop = [{ place: places[0] ?? null }, { place: { x: 10.5, y: -1 } }];
    const refused = cutOf([square(20)], 'punch', { choice: { tabs: 2, stretches: onTop } });
    expect(refused.layout.troubles).toMatchObject([
      { kind: 'place', stretch: 1, because: 'past another tab' },
    ]);
    expect(refused.cut.tabs).toHaveLength(2);
  });

  it('have a length each, where someone types one', () => {
    const stretches = [{ tabLength: 3 }, { tabLength: 1 }];
    const planned = cutOf([square(20)], 'punch', { choice: { tabs: 2, stretches } });
    // Tab i lies before stretch i + 1.
    expect(planned.cut.tabs.map(({ length }) => length)).toEqual([1, 3]);
  });

  it('take no more than a quarter of their stretch', () => {
    const planned = cutOf([circle(1.5)], 'die', { wishes: { tabLength: 5 } });
    const [tab] = planned.cut.tabs;
    expect(tab?.length).toBeCloseTo(contourLength(planned.cut.passes[0]?.loop ?? []) / 4, 9);
    expect(planned.layout.wantedTabs).toEqual([5]);
  });

  it('by weight and perimeter where the job says so', () => {
    const planned = cutOf([circle(25)], 'punch', { wishes: { tabRule: 'weight' } });
    // Disk of about 50 mm in 25 mm of steel: 2.8 mm (the docstring's example).
    expect(planned.cut.tabs[0]?.length).toBeCloseTo(2.8, 9);
  });
});
