import { describe, expect, it } from 'vitest';
import { readLength, steppedLength } from '../../../renderer/controls/length-input';
import { readClearance } from '../../../renderer/jobline/clearance-value';

describe('steppedLength', () => {
  it('turns the second digit in the unit on display', () => {
    expect(steppedLength(0.25, 1, 'mm', 'above')).toBe(0.26);
    expect(steppedLength(0.25, -1, 'mm', 'above')).toBe(0.24);
    expect(steppedLength(1.5, 1, 'mm', 'above')).toBe(1.6);
    expect(steppedLength(0.02, -1, 'mm', 'above')).toBe(0.019);
    expect(steppedLength(0.254, 1, 'inch', 'above')).toBeCloseTo(0.011 * 25.4, 9);
  });

  it('stops at the end of the range', () => {
    expect(steppedLength(0, 1, 'mm', 'zero')).toBe(0.001);
    expect(steppedLength(0, -1, 'mm', 'zero')).toBeNull();
    expect(steppedLength(0.0001, -1, 'mm', 'zero')).toBe(0);
    expect(steppedLength(0.0001, -1, 'mm', 'above')).toBeNull();
  });
});

describe('readLength', () => {
  it('takes zero only where it makes sense, and nothing below it', () => {
    const code = (text: string, mayBeZero: boolean) => {
      const result = readLength(text, 'Tab length', mayBeZero, { unit: 'mm' });
      return result.ok ? result.value : result.problem.code;
    };
    expect(code('0', true)).toBe(0);
    expect(code('0', false)).toBe('length-out-of-range');
    expect(code('-1', true)).toBe('length-out-of-range');
    expect(code('a', true)).toBe('length-not-read');
  });
});

describe('readClearance', () => {
  it('keeps a percentage as a rule that follows the thickness', () => {
    expect(readClearance('10 % t', 'mm', 1.5)).toEqual({ ok: true, value: { rule: 'percent', percent: 10 } });
    expect(readClearance('7,5%', 'inch', 3.2)).toEqual({
      ok: true,
      value: { rule: 'percent', percent: 7.5 },
    });
  });

  it('keeps anything else as typed, in mm', () => {
    expect(readClearance('0.001 in', 'mm', 1.5)).toEqual({
      ok: true,
      value: { rule: 'typed', perSide: expect.closeTo(0.0254, 12) as number },
    });
    expect(readClearance('0', 'mm', 1.5)).toHaveProperty('ok', false);
  });
});
