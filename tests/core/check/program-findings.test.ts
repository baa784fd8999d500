import { describe, expect, it } from 'vitest';
import { programFindings } from '../../../core/check/program-findings';

describe('programFindings', () => {
  const fault = (line: number) => ({ line, say: `Line ${line} is wrong`, at: { x: line, y: 0 } });

  it('makes every fault a stop that names its line and place', () => {
    const [finding, ...others] = programFindings('die', [fault(7)]);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ weight: 'stop', code: 'proof-program', place: { x: 7, y: 0 } });
    expect(finding?.message).toBe('Program of die, line 7: Line 7 is wrong.');
  });

  it('says how many more there are after the first five', () => {
    const findings = programFindings('die', [1, 2, 3, 4, 5, 6, 7].map(fault));
    expect(findings).toHaveLength(6);
    expect(findings.at(-1)?.message).toBe('Program of die: 2 more.');
    expect(new Set(findings.map(({ key }) => key)).size).toBe(6);
  });
});
