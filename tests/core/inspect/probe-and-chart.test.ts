import { expect, test } from 'vitest';
import { clearanceChart } from '../../../core/inspect/clearance-chart';
import { clearanceMap } from '../../../core/inspect/clearance-map';
import { gapPicture } from '../../../core/inspect/gap-picture';
import { movedRegion } from '../../../core/inspect/motion';
import { clearanceAtStation, stationNear } from '../../../core/inspect/probe-clearance';
import type { Region } from '../../../core/geometry/contour';
import { circle, square } from '../../support/shapes';

// A square punch of 10 in a square opening of 10.1, 0.02 to the right: 0.03 there, 0.07 on the left.
const punch: Region = movedRegion({ dx: 0.02, dy: 0, turn: 0, about: { x: 0, y: 0 } }, [square(10)]);
const die: Region = [square(10.1, -0.05, -0.05)];
const map = clearanceMap(punch, die, 0.05, 0.01);

test('a pointer near the right edge reads 0.03, square to it', () => {
  if (!map) throw new Error('no map');
  const station = stationNear(punch, { x: 10.2, y: 4 }) ?? NaN;
  expect(station).toBeCloseTo(14, 12);
  const place = clearanceAtStation(map, punch, station);
  expect(place.clearance).toBeCloseTo(0.03, 12);
  expect(place.at.y).toBeCloseTo(4, 12);
  expect(place.foot.x).toBeCloseTo(10.05, 12);
  expect(place.foot.y).toBeCloseTo(4, 12);
  // Once round and back.
  expect(clearanceAtStation(map, punch, station + 40).clearance).toBeCloseTo(0.03, 12);
  expect(clearanceAtStation(map, punch, station - 40).clearance).toBeCloseTo(0.03, 12);
});

test('the chart runs from 0 to the perimeter without a step back, and holds least and greatest', () => {
  if (!map) throw new Error('no map');
  const [line = []] = clearanceChart(map, punch);
  expect(line[0]?.station).toBe(0);
  expect(line.at(-1)?.station).toBeCloseTo(40, 9);
  line.forEach(({ station }, k) =>
    expect(station).toBeGreaterThanOrEqual((line[k - 1]?.station ?? 0) - 1e-12),
  );
  const values = line.map(({ clearance }) => clearance);
  expect(Math.min(...values)).toBeCloseTo(0.03, 12);
  expect(Math.max(...values)).toBeCloseTo(0.07, 12);
});

test('the light test: a gap drawn ten times as wide, and no contact', () => {
  if (!map) throw new Error('no map');
  const { light, contacts } = gapPicture(map, punch, 10);
  // Half way up: light from the right edge inwards to 10.05 − 0.3, from the left one to −0.05 + 0.7, dark between.
  const across = light
    .filter((band) => Math.min(...band.map(({ y }) => y)) < 5 && Math.max(...band.map(({ y }) => y)) > 5)
    .map((band) => band.map(({ x }) => Number(x.toFixed(9))))
    .map((xs) => [Math.min(...xs), Math.max(...xs)]);
  expect(across.sort()).toEqual([
    [-0.05, 0.65],
    [9.75, 10.05],
  ]);
  expect(contacts).toEqual([]);
});

test('the light test: where the punch touches, no light', () => {
  const touching = movedRegion({ dx: 0.05, dy: 0, turn: 0, about: { x: 0, y: 0 } }, [circle(5)]);
  const round = clearanceMap(touching, [circle(5.05)], 0.05, 0.01);
  if (!round) throw new Error('no map');
  const { contacts } = gapPicture(round, touching, 10);
  expect(contacts).toHaveLength(1);
  expect(contacts[0]?.at.x).toBeCloseTo(5.05, 9);
  expect(contacts[0]?.length).toBe(0);
});
