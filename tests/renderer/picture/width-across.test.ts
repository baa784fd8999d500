import { describe, expect, it } from 'vitest';
import { widthAcross } from '../../../renderer/picture/width-across';
import { testPlan } from '../support/test-app';

// A blank of 20 × 10 mm about the origin; its punch is 0.06 mm smaller all round.
describe('widthAcross', () => {
  const [pair] = testPlan().pairs;
  if (!pair) throw new Error('no pair');
  const { die, punch } = pair;

  it('measures a die opening and a punch square to the contour, from either side of it', () => {
    expect(widthAcross(die, { x: 3, y: 5.01 })).toBeCloseTo(10, 9);
    expect(widthAcross(die, { x: 3, y: 4.99 })).toBeCloseTo(10, 9);
    expect(widthAcross(die, { x: -10.2, y: 1 })).toBeCloseTo(20, 9);
    expect(widthAcross(punch, { x: 3, y: -4.9 })).toBeCloseTo(9.88, 9);
  });

  it('says nothing on the contour itself', () => {
    expect(widthAcross(die, { x: 3, y: 5 })).toBeNull();
  });
});
