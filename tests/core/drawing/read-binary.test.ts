import { describe, expect, it } from 'vitest';
import { outlineOf, readDrawing } from '../../../core/drawing/read-drawing';
import { binaryDxf } from './binary-dxf';
import {
  arc,
  bytes,
  dxfGroups,
  line,
  pairText,
  polyline,
  problemOf,
  square,
  valueOf,
  xy,
  type Groups,
} from './drawn';

const entities: Groups = [
  ...polyline(true, xy('0,0 10.1,0,0.25 10.1,7.3 0,7.3'), 'CUT'),
  ...[
    ...arc(5, 4, 1.7, 10, 190),
    ...line(5 + 1.7 * Math.cos(Math.PI / 18), 4 + 1.7 * Math.sin(Math.PI / 18), 3, 3),
  ],
  ...[0, 'IMAGE', 8, 'X', 310, 'ABC', 290, 1, 1071, 5],
];
const groups = dxfGroups({ entities });

describe('a binary DXF', () => {
  it.each([1, 2] as const)(
    'with codes of %i bytes reads as the same drawing in ASCII, to the last bit',
    (width) => {
      // 1071 is four bytes wide and written by the test for codes from 90 to 99 only.
      const plain = groups.filter((_, i) => groups[i - (i % 2)] !== 1071);
      const binary = valueOf(readDrawing(binaryDxf(plain, width)));
      const ascii = valueOf(readDrawing(bytes(pairText(plain))));
      expect(binary.pieces).toEqual(ascii.pieces);
      expect(binary.unused).toEqual(ascii.unused);
      expect(valueOf(outlineOf(binary, 'mm', 0.005)).contours).toHaveLength(1);
    },
  );

  it('cut off anywhere is a problem or a finding with its byte, never an exception', () => {
    const whole = binaryDxf(dxfGroups({ entities: square(0, 0, 10) }), 2);
    for (let end = 22; end < whole.length; end++) {
      const read = readDrawing(whole.subarray(0, end));
      if (!read.ok) expect(read.problem.what).not.toBe('');
      else expect(read.value.damage.length).toBeGreaterThan(0);
    }
    const torn = problemOf(readDrawing(whole.subarray(0, whole.length - 40)));
    expect(torn).toMatchObject({ code: 'drawing-cut-off', where: expect.stringMatching(/^byte \d+$/) });
  });

  it('a number that is none, and a code that no group has, are refused with their byte', () => {
    const odd = dxfGroups({ entities: [...square(0, 0, 10), ...line(0, 0, Number.NaN, 5)] });
    expect(problemOf(readDrawing(binaryDxf(odd, 2)))).toMatchObject({
      code: 'drawing-bad-number',
      where: expect.stringMatching(/^byte \d+$/),
    });
    const strange = binaryDxf([...groups.slice(0, 4), 555, 'x'], 2);
    expect(problemOf(readDrawing(strange))).toMatchObject({ code: 'drawing-damaged' });
  });
});
