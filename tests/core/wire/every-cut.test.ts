import { describe, expect, it } from 'vitest';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import { newLead, noChoice } from '../../../core/cut-settings';
import type { CutWishes } from '../../../core/wire/cut-wishes';
import { passOffsets } from '../../../core/wire/pass-offsets';
import { planCuts } from '../../../core/wire/plan-cuts';
import { openSite } from '../../../core/wire/site';
import { expectSound } from '../../support/sound-cut';

const passes = passOffsets(0.25, [
  { sparkGap: 0.025, stockLeft: 0.015, feed: 4 },
  { sparkGap: 0.022, stockLeft: 0.004, feed: 6 },
  { sparkGap: 0.02, stockLeft: 0, feed: 8 },
]);
const wishes: CutWishes = {
  ...newLead,
  height: 25,
  lastDecimal: 0.00001,
  wireDiameter: 0.25,
  sequence: 'part by part',
};

const shapes = ['perpendicular', 'straight', 'tangent arc'] as const;
const variations = shapes.flatMap((shape) =>
  ([0, 1, 3] as const).flatMap((tabs) =>
    (['kept', 'dropped'] as const).map((slug) => ({ shape, tabs, slug })),
  ),
);

describe('every cut of random contours', () => {
  it.each(Object.keys(families))(
    '%s: connected, covering, clear of the member and of the holes',
    (family) => {
      if (!passes.ok) throw new Error(passes.problem.what);
      let checked = 0;
      variations.forEach(({ shape, tabs, slug }, k) => {
        const designed = [randomContour(family, seeded(k * 7919 + 13))];
        for (const role of ['die', 'punch'] as const) {
          const own: CutWishes = {
            ...wishes,
            shape,
            slug,
            direction: k % 2 === 0 ? 'counter-clockwise' : 'clockwise',
            sequence: k % 3 === 0 ? 'roughing first' : 'part by part',
          };
          // The first cut has so many tabs, the others what the rule gives them.
          const choices = { 'm-1': { ...noChoice, tabs } };
          for (const { cut, layout, brokenPasses } of planCuts(
            'm',
            designed,
            role,
            passes.value,
            own,
            openSite,
            choices,
          )) {
            if (cut.starts.includes(null) || brokenPasses.length > 0) continue;
            expectSound(cut, designed, wishes.holeClearance, layout.overlap);
            checked++;
          }
        }
      });
      expect(checked).toBeGreaterThan(10);
    },
  );
});
