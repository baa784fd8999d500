import { expect, it } from 'vitest';
import { clearOfMember } from '../../../core/check/clear-of-member';
import type { WireMove } from '../../../core/check/wire-path';
import { square } from '../../support/shapes';

const upright = { x: 0, y: 0 };

/** A straight cut in line 1. */
const cut = (x: number, y: number): WireMove => ({
  line: 1,
  move: 0,
  isRapid: false,
  feed: 4,
  from: { x, y },
  to: { x: x + 1, y },
  centre: null,
  turn: 0,
  leanFrom: upright,
  leanTo: upright,
});

// One block of which one opening is cut out of another's slug: both go round the wire.
it('a wire inside an opening that lies in another opening is where it may be, outside of both it is not', () => {
  const nested = [square(40), square(20, 10, 10), square(4, 18, 18)];
  expect(clearOfMember([cut(15, 15)], nested, 'die', 0.15).wrongSide).toBeNull();
  expect(clearOfMember([cut(19, 20)], nested, 'die', 0.15).wrongSide).toBeNull();
  expect(clearOfMember([cut(5, 5)], nested, 'die', 0.15).wrongSide).toBeNull();
  expect(clearOfMember([cut(50, 5)], nested, 'die', 0.15).wrongSide).toBe(1);
});

it('steel that stands in an opening is none of it', () => {
  const island = [square(40), [...square(20, 10, 10)].reverse()];
  expect(clearOfMember([cut(5, 5)], island, 'die', 0.15).wrongSide).toBeNull();
  expect(clearOfMember([cut(15, 15)], island, 'die', 0.15).wrongSide).toBe(1);
});
