import { expect, test } from 'vitest';
import { sayGap, sayLength } from '../../core/say';

// 1 inch is 25.4 mm exactly (international yard and pound agreement of 1959).
test('a length in both units, as far as their digits say anything', () => {
  expect(sayLength(25.4)).toBe('25.4 mm (1 in)');
  expect(sayLength(0)).toBe('0 mm (0 in)');
  expect(sayLength(0.0002)).toBe('0.0002 mm (0.00001 in)');
  expect(sayLength(0.0001)).toBe('0.0001 mm');
  expect(sayLength(0.00004)).toBe('under 0.0001 mm');
});

test('a gap below zero', () => {
  expect(sayGap(-0.005)).toBe('−0.005 mm (−0.0002 in)');
  expect(sayGap(-0.0001)).toBe('−0.0001 mm');
});
