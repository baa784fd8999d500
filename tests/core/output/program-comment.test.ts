import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { programComment } from '../../../core/output/program-comment';

describe('programComment', () => {
  it('says in upper-case ASCII what the text says', () => {
    expect(programComment('Bügel Ø5 – 6 % × t')).toEqual(['(BUGEL ?5 - 6 PERCENT X T)']);
  });

  it('leaves no bracket inside that would end the comment', () => {
    expect(programComment('hinge (left) M30')).toEqual(['(HINGE - LEFT M30)']);
    expect(programComment('a) G00 X0 (b')).toEqual(['(A G00 X0 - B)']);
    // One sign that falls apart into three, two of them brackets.
    expect(programComment('⒜ µm')).toEqual(['(- A UM)']);
  });

  it('wraps between words and cuts a word without end', () => {
    const lines = programComment(`${'word '.repeat(40)}${'x'.repeat(200)}`);
    expect(lines.length).toBeGreaterThan(4);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(72);
  });

  it('gives nothing for nothing', () => {
    expect(programComment('')).toEqual([]);
    expect(programComment(' \n\t ')).toEqual([]);
  });

  it('keeps any text inside its brackets, on one line, in printable ASCII', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        for (const line of programComment(text)) {
          expect(line).toMatch(/^\([^()%;]+\)$/);
          expect(line).toMatch(/^[ -~]+$/);
        }
      }),
    );
  });
});
