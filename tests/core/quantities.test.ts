import { describe, expect, it } from 'vitest';
import { formatQuantity, parseQuantity, steppedQuantity, type Quantity } from '../../core/quantities';
import { sayProblem } from '../../core/problem';

const parsed = (text: string, quantity: Quantity, display: 'mm' | 'inch' = 'mm') => {
  const value = parseQuantity(text, quantity, display);
  return value.ok ? value.value : sayProblem(value.problem);
};

// 1 in = 25.4 mm exactly, so 1 in²/h = 645.16 mm² / 60 min, 1 µin = 0.0254 µm, 1 ft = 0.3048 m.
describe('quantities of a technology table', () => {
  it('are read in either unit and kept in that of the file', () => {
    expect(parsed('100', 'rate')).toBe(100);
    expect(parsed('9.3 in²/h', 'rate')).toBeCloseTo((9.3 * 645.16) / 60, 9);
    expect(parsed('9,3', 'rate', 'inch')).toBeCloseTo((9.3 * 645.16) / 60, 9);
    expect(parsed('32 µin', 'roughness')).toBeCloseTo(0.8128, 9);
    expect(parsed('.8um', 'roughness')).toBe(0.8);
    expect(parsed('10 ft/min', 'wire speed')).toBeCloseTo(3.048, 9);
    expect(parsed('0.2 in/min', 'feed')).toBeCloseTo(5.08, 9);
  });

  it('read back what they show', () => {
    for (const quantity of ['rate', 'roughness', 'wire speed', 'feed'] as const) {
      for (const display of ['mm', 'inch'] as const) {
        const again = parsed(formatQuantity(123.4, quantity, display), quantity, display);
        expect(Math.abs(Number(again) / 123.4 - 1)).toBeLessThan(0.0006);
      }
    }
  });

  it('that are none say what can be typed', () => {
    expect(parsed('fast', 'rate')).toBe(
      '"fast" is no rate. Type a number more than zero, in mm²/min or in²/h.',
    );
    for (const text of ['0', '-1', '1 mm', '1..2', '', 'Infinity'])
      expect(parsed(text, 'feed')).toContain('is no feed');
  });

  it('step by their second figure and never to zero', () => {
    expect(steppedQuantity(100, 1, 'rate', 'mm')).toBe(110);
    expect(steppedQuantity(1.6, -1, 'roughness', 'mm')).toBeCloseTo(1.5, 12);
    expect(steppedQuantity(0.1, -1, 'feed', 'mm')).toBeCloseTo(0.09, 12);
  });
});
