import { expect, test } from 'vitest';
import type { Region } from '../../../core/geometry/contour';
import { offsetRegion } from '../../../core/geometry/offset-region';
import { openRegion } from '../../../core/geometry/open-region';
import { clearanceMap } from '../../../core/inspect/clearance-map';
import { evenPosition } from '../../../core/inspect/even-position';
import { movedRegion } from '../../../core/inspect/motion';
import { randomContour, seeded } from '../../../build/fuzz/random-contours';
import { angleShape, circle, polygon, square } from '../../support/shapes';

// Sources: closed forms of elementary geometry, and a slow search over all nearby positions.

const shifted = (region: Region, dx: number, dy: number, turn = 0) =>
  movedRegion({ dx, dy, turn, about: { x: 0, y: 0 } }, region);
const even = (punch: Region, die: Region) => {
  const found = evenPosition(punch, die);
  if (!found) throw new Error('no position');
  return found;
};

test('a round punch goes to the middle of a round die, and is not turned', () => {
  const { motion, least } = even([circle(5, 0.03, -0.02)], [circle(5.05)]);
  expect(least).toBeCloseTo(0.05, 6);
  expect(motion.dx).toBeCloseTo(-0.03, 5);
  expect(motion.dy).toBeCloseTo(0.02, 5);
  expect(motion.turn).toBe(0);
});

test('a square is turned back and shifted back, from a collision too', () => {
  const die: Region = [square(10.1, -5.05, -5.05)];
  for (const turn of [0.002, 0.02, 0.15]) {
    const { motion, least } = even(shifted([square(10, -5, -5)], 0.02, -0.01, turn), die);
    expect(least).toBeCloseTo(0.05, 6);
    expect(motion.turn).toBeCloseTo(-turn, 5);
    expect(motion.dx).toBeCloseTo(-0.02, 5);
    expect(motion.dy).toBeCloseTo(0.01, 5);
  }
});

test('in a triangle a round punch goes to the incentre: inradius − r', () => {
  // Sides 3, 4, 5: inradius 1, incentre (1, 1).
  const { motion, least } = even([circle(0.5, 0.8, 0.6)], [polygon([0, 0], [4, 0], [0, 3])]);
  expect(least).toBeCloseTo(0.5, 6);
  expect(0.8 + motion.dx).toBeCloseTo(1, 5);
  expect(0.6 + motion.dy).toBeCloseTo(1, 5);
});

test('a punch narrower on one side stands in the middle of its play', () => {
  // 9.9 × 9.98 in 10.1 × 10.1: 0.1 and 0.06 either side; 0.06 is the most that the narrow way lets be.
  const punch: Region = [polygon([0, 0], [9.9, 0], [9.9, 9.98], [0, 9.98])];
  const { least, motion } = even(punch, [square(10.1)]);
  expect(least).toBeCloseTo(0.06, 6);
  expect(motion.dy).toBeCloseTo(0.06, 5);
});

test('no nearby position is better: a slow search about the one found, odd shapes and wrong punches', () => {
  const random = seeded(77);
  const cases: Region[] = [
    [angleShape(10, 4)],
    ...['gear', 'rounded maze', 'crystal', 'random arcs'].map((family) => [randomContour(family, random)]),
  ];
  for (const drawn of cases) {
    const die = openRegion(drawn, 0.15);
    // The punch has the wrong corners and one clearance less on the right half.
    const punch = offsetRegion(drawn, -0.05).map((loop) =>
      loop.map((v) => (v.x > 2 ? { ...v, x: v.x - 0.01 } : v)),
    );
    const { motion, least } = even(punch, die);
    const at = (dx: number, dy: number, turn: number): number =>
      clearanceMap(
        movedRegion({ ...motion, dx: motion.dx + dx, dy: motion.dy + dy, turn: motion.turn + turn }, punch),
        die,
        0.05,
        0.005,
      )?.least.clearance ?? -Infinity;
    expect(at(0, 0, 0)).toBeCloseTo(least, 9);
    for (let k = 0; k < 60; k++) {
      const size = 10 ** -(1 + 4 * random());
      const [dx, dy, turn] = [0, 0, 0].map(() => size * (2 * random() - 1)) as [number, number, number];
      expect(at(dx, dy, turn / 5)).toBeLessThan(least + 1e-6);
    }
  }
});
