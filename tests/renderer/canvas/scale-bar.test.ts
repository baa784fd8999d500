import { describe, expect, it } from 'vitest';
import { roundBar } from '../../../renderer/canvas/scale-bar';

describe('roundBar', () => {
  it('takes the longest round length that fits', () => {
    expect(roundBar(10, 'mm')).toEqual({ length: '10 mm', pixels: 100 });
    expect(roundBar(2000, 'mm')).toEqual({ length: '0.05 mm', pixels: 100 });
    // 150 px at 10 px/mm are 15 mm or 0.59 in.
    expect(roundBar(10, 'inch')).toEqual({ length: '0.5 in', pixels: 127 });
  });
});
