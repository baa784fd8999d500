import { describe, expect, it } from 'vitest';
import { takesLongToProve } from '../../../renderer/worker/takes-long-to-prove';
import { testPlan } from '../support/test-app';

describe('takesLongToProve', () => {
  it('is true of thousands of segments, not of a rounded rectangle', () => {
    const plan = testPlan();
    expect(takesLongToProve(plan)).toBe(false);
    const [pair] = plan.pairs;
    if (!pair) throw new Error('no pair');
    const [contour = []] = pair.die.designed;
    const many = Array.from({ length: 1000 }, () => contour).flat();
    expect(takesLongToProve({ ...plan, pairs: [{ ...pair, die: { ...pair.die, designed: [many] } }] })).toBe(
      true,
    );
  });
});
