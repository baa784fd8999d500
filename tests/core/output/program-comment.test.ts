import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { neutralStyle } from '../../../core/neutral-style';
import { programComment } from '../../../core/output/program-comment';

const commented = (text: string) => programComment(text, neutralStyle.comments);

describe('programComment', () => {
  it('says in upper-case ASCII what the text says', () => {
    expect(commented('Bügel Ø5 – 6 % × t')).toEqual(['(BUGEL ?5 - 6 PERCENT X T)']);
  });

  it('leaves no bracket inside that would end the comment', () => {
    expect(commented('hinge (left) M30')).toEqual(['(HINGE - LEFT M30)']);
    expect(commented('a) G00 X0 (b')).toEqual(['(A G00 X0 - B)']);
    // One sign that falls apart into three, two of them brackets.
    expect(commented('⒜ µm')).toEqual(['(- A UM)']);
  });

  it('wraps between words and cuts a word without end', () => {
    const lines = commented(`${'word '.repeat(40)}${'x'.repeat(200)}`);
    expect(lines.length).toBeGreaterThan(4);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(72);
  });

  it('gives nothing for nothing', () => {
    expect(commented('')).toEqual([]);
    expect(commented(' \n\t ')).toEqual([]);
  });

  it('keeps any text inside its brackets, on one line, in printable ASCII', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        for (const line of commented(text)) {
          expect(line).toMatch(/^\([^()%;]+\)$/);
          expect(line).toMatch(/^[ -~]+$/);
        }
      }),
    );
  });
});
