import { describe, expect, it } from 'vitest';
import { outlineOf, readDrawing } from '../../../core/drawing/read-drawing';
import { contourArea } from '../../../core/geometry/contour-measures';
import { bytes, problemOf, valueOf } from './drawn';

const read = (text: string) => valueOf(readDrawing(bytes(text)));
const areas = (text: string): number[] => {
  const raw = read(text);
  const drawing = valueOf(outlineOf(raw, raw.statedUnit ?? 'mm', 0.005));
  return drawing.contours.map(({ contour }) => contourArea(contour));
};

describe('a list of points', () => {
  it.each([
    ['commas', '0,0\n10,0\n10,8.5\n0,8.5\n'],
    ['commas and blanks, CRLF', '0, 0\r\n10, 0\r\n10, 8.5\r\n0, 8.5'],
    ['semicolons and decimal commas', '0;0\n10;0\n10;8,5\n0;8,5\n'],
    ['tabs', '0\t0\n10\t0\n10\t8.5\n0\t8.5\n'],
    ['blanks and decimal commas', '0 0\n10 0\n10 8,5\n0 8,5\n'],
    ['first point again at the end', '0,0\n10,0\n10,8.5\n0,8.5\n0,0\n'],
    [
      'a heading, remarks, a mark',
      '\u00ef\u00bb\u00bf# by hand\nx,y\n0,0 # corner\n10,0\n10,8.5\n#\n0,8.5\n',
    ],
    ['exponents', '0,0\n1e1,0\n1.0E+1,.85e1\n-0,8.5\n'],
  ])('%s', (_, text) => {
    expect(read(text).format).toBe('csv');
    expect(areas(text)).toEqual([expect.closeTo(85, 12)]);
  });

  it('blank lines part contours; a third number is passed over with a note', () => {
    const text = '0,0,1\n10,0,1\n10,10,1\n0,10,1\n\n2,2\n4,2\n4,4\n2,4\n';
    expect(areas(text)).toEqual([100, 4]);
    expect(read(text).damage).toHaveLength(1);
  });

  it('the unit stands in the heading, else a person is asked', () => {
    expect(read('x (in),y (in)\n0,0\n1,0\n1,1\n').statedUnit).toBe('inch');
    expect(read('x mm;y mm\n0;0\n1;0\n1;1\n').statedUnit).toBe('mm');
    expect(read('0,0\n1,0\n1,1\n').statedUnit).toBeNull();
  });

  it.each([
    ['a word', '0,0\n10,0\nten,10\n', 'line 3'],
    ['one number', '0,0\n10,0\n10\n', 'line 3'],
    ['nan', '0,0\n10,0\nnan,10\n', 'line 3'],
    ['too large', '0,0\n10,0\n1e12,10\n', 'line 3'],
    ['four numbers', '0,0\n1,2,3,4\n', 'line 2'],
  ])('a line that is no point is refused with its number: %s', (_, text, where) => {
    expect(problemOf(readDrawing(bytes(text)))).toMatchObject({ code: 'drawing-bad-number', where });
  });

  it('a single number on the first line is no list: it may be a DXF', () => {
    expect(problemOf(readDrawing(bytes('10\n20\n30\n'))).code).toBe('drawing-not-dxf');
  });
});
