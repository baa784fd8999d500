import { expect, test } from 'vitest';
import type { Region } from '../../../core/geometry/contour';
import { comparePoints, type FitChoice } from '../../../core/inspect/compare-points';
import { measuredPair } from '../../../core/inspect/measured-pair';
import { circle, square } from '../../support/shapes';

// Sources: closed forms, written beside each case.

const asMeasured: FitChoice = {
  method: 'as measured',
  freedom: { shiftX: false, shiftY: false, turn: false },
  outliers: 'keep',
};
const zone = { width: 0.1, outside: null };

const around = (count: number, at: (angle: number) => { x: number; y: number }) =>
  Array.from({ length: count }, (_, k) => ({ ...at((2 * Math.PI * k) / count), id: `${k + 1}` }));
const onCircle =
  (radius: number, cx = 0, cy = 0) =>
  (angle: number) => ({
    x: cx + radius * Math.cos(angle),
    y: cy + radius * Math.sin(angle),
  });

test('a punch 2 µm small in a die 3 µm large: 5 µm more clearance all round', () => {
  const designed = { punch: [circle(5)], die: [circle(5.05)] };
  const pair = measuredPair(
    {
      designed: designed.punch,
      comparison: comparePoints(around(36, onCircle(4.998)), designed.punch, 'inside', asMeasured, zone),
    },
    {
      designed: designed.die,
      comparison: comparePoints(around(36, onCircle(5.053)), designed.die, 'outside', asMeasured, zone),
    },
    0.05,
    0.01,
  );
  if (!pair) throw new Error('no pair');
  // Chords of the real contours lie at most 0.0001 inside their arcs.
  expect(Math.abs(pair.map.mean - 0.055)).toBeLessThan(2e-4);
  expect(pair.places).toHaveLength(72);
  for (const { clearance } of pair.places) expect(Math.abs(clearance - 0.055)).toBeLessThan(2e-4);
  expect(pair.passes).toBe(true);
  expect(pair.widestGap.punch).toBeCloseTo((10 * Math.PI) / 36, 3);
});

test('a square punch worn on one side: wide there and only there', () => {
  const designed = { punch: [square(10)] as Region, die: [square(10.1, -0.05, -0.05)] as Region };
  const edge = (n: number, at: (s: number) => { x: number; y: number }, name: string) =>
    Array.from({ length: n }, (_, k) => ({ ...at((10 * (k + 0.5)) / n), id: `${name}${k + 1}` }));
  const points = [
    ...edge(10, (s) => ({ x: s, y: 0 }), 'south '),
    // 0.02 worn away in the middle six of ten points.
    ...edge(10, (s) => ({ x: s > 2 && s < 8 ? 9.98 : 10, y: s }), 'east '),
    ...edge(10, (s) => ({ x: s, y: 10 }), 'north '),
    ...edge(10, (s) => ({ x: 0, y: s }), 'west '),
  ];
  const dieEdges = [
    ...edge(10, (s) => ({ x: s, y: -0.05 }), 's'),
    ...edge(10, (s) => ({ x: 10.05, y: s }), 'e'),
    ...edge(10, (s) => ({ x: s, y: 10.05 }), 'n'),
    ...edge(10, (s) => ({ x: -0.05, y: s }), 'w'),
  ];
  const pair = measuredPair(
    {
      designed: designed.punch,
      comparison: comparePoints(points, designed.punch, 'inside', asMeasured, zone),
    },
    {
      designed: designed.die,
      comparison: comparePoints(dieEdges, designed.die, 'outside', asMeasured, zone),
    },
    0.05,
    0.01,
  );
  if (!pair) throw new Error('no pair');
  expect(pair.passes).toBe(false);
  expect(pair.map.greatest.clearance).toBeCloseTo(0.07, 9);
  expect(pair.map.least.clearance).toBeCloseTo(0.05, 9);
  const wide = pair.places.filter(({ band, member }) => band === 'wide' && member === 'punch');
  expect(wide.map(({ id }) => id)).toEqual([3, 4, 5, 6, 7, 8].map((k) => `east ${k}`));
});

test('a loop without a point: the widest gap is the whole loop', () => {
  const comparison = comparePoints(around(8, onCircle(5)), [circle(5)], 'inside', asMeasured, zone);
  const pair = measuredPair(
    { designed: [circle(5), circle(1, 20, 0)], comparison },
    { designed: [circle(5.05), circle(1.05, 20, 0)], comparison },
    0.05,
    0.01,
  );
  expect(pair?.widestGap.punch).toBeCloseTo(2 * Math.PI, 9);
  expect(pair?.widestGap.die).toBeCloseTo(2.1 * Math.PI, 9);
});
