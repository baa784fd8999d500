import { describe, expect, test } from 'vitest';
import { clearanceMap } from '../../../core/inspect/clearance-map';
import { histogram } from '../../../core/inspect/histogram';
import { outsidePlaces } from '../../../core/inspect/outside-places';
import { neededWidth, sayTolerance, zoneLimits } from '../../../core/inspect/profile-tolerance';
import { roundExaggeration } from '../../../core/inspect/round-exaggeration';
import { circle, square } from '../../support/shapes';

const places = (punch: Parameters<typeof clearanceMap>[0], die: Parameters<typeof clearanceMap>[1]) => {
  const map = clearanceMap(punch, die, 0.05, 0.01);
  if (!map) throw new Error('no map');
  return outsidePlaces(map).map(({ band, worst, length }) => [
    band,
    Number(worst.clearance.toFixed(9)),
    Number(length.toFixed(9)),
  ]);
};

test('each side of a square out of place is one place, also over the seam of the loop', () => {
  // 0.02 to the right: 0.03 there and 0.07 on the left; at its ends the neighbours' 0.05 is nearer, 0.01 farther on.
  const punch = square(10, 0.02);
  const die = [square(10.1, -0.05, -0.05)];
  const expected = [
    ['tight', 0.03, 10.02],
    ['wide', 0.07, 9.98],
  ];
  for (let turn = 0; turn < 4; turn++) {
    const turned = [...punch.slice(turn), ...punch.slice(0, turn)];
    const found = places([turned], die);
    expect(found.sort()).toEqual(expected);
  }
});

test('none where all of it is within, one where a loop is wholly outside', () => {
  expect(places([circle(5)], [circle(5.05)])).toEqual([]);
  expect(places([circle(5)], [circle(5.07)])).toEqual([['wide', 0.07, Number((10 * Math.PI).toFixed(9))]]);
});

describe('the spread of deviations', () => {
  test('every value counts once, outliers too, in round steps', () => {
    const values = [...Array.from({ length: 60 }, (_, k) => (k - 30) / 10_000), 0.2];
    const { from, step, counts } = histogram(values);
    expect(counts.reduce((a, b) => a + b, 0)).toBe(61);
    expect(counts.length).toBeLessThanOrEqual(41);
    expect([1, 2, 5]).toContain(Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9)));
    expect(from).toBeLessThanOrEqual(-0.003);
    expect(from + counts.length * step).toBeGreaterThanOrEqual(0.2);
  });

  test('a value alone, and none', () => {
    expect(histogram([0.003]).counts).toEqual([1]);
    expect(histogram([]).counts).toEqual([]);
  });
});

test('exaggerations are 1, 2 or 5 times a power of ten, and stay within the room', () => {
  expect(roundExaggeration(0.006, 3)).toBe(500);
  expect(roundExaggeration(0.0061, 3)).toBe(200);
  expect(roundExaggeration(0.02, 2)).toBe(100);
  expect(roundExaggeration(5, 3)).toBe(1);
  expect(roundExaggeration(0, 3)).toBe(1);
});

// ASME Y14.5: the value after the circled U lies outside the material; ISO 1101: UZ shifts the middle of the zone.
describe.each([
  [0.02, null, -0.01, 0.01, '0.02 (ISO 1101, ASME Y14.5)'],
  [0.02, 0.015, -0.005, 0.015, '0.02 (U) 0.015 (ASME Y14.5), 0.02 UZ +0.005 (ISO 1101)'],
  [0.02, 0.02, 0, 0.02, '0.02 (U) 0.02 (ASME Y14.5), 0.02 UZ +0.01 (ISO 1101)'],
  [0.02, 0, -0.02, 0, '0.02 (U) 0 (ASME Y14.5), 0.02 UZ -0.01 (ISO 1101)'],
])('a zone %d wide, %s outside', (width, outside, low, high, words) => {
  test('its limits, its words, and the width that a deviation on a limit needs', () => {
    const zone = { width, outside };
    expect(zoneLimits(zone).low).toBeCloseTo(low, 12);
    expect(zoneLimits(zone).high).toBeCloseTo(high, 12);
    expect(sayTolerance(zone, (mm) => String(Number(mm.toFixed(6))))).toBe(words);
    expect(neededWidth(zone, [low])).toBeCloseTo(width, 12);
    expect(neededWidth(zone, [high])).toBeCloseTo(width, 12);
  });
});
