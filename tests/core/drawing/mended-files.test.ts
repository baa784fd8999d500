import { describe, expect, it } from 'vitest';
import { contourArea } from '../../../core/geometry/contour-measures';
import { circle, codesOf, drawn, dxf, line, outline, pairText, raw, square, xy, type Groups } from './drawn';

const note = 'note drawing-mended';

describe('what makes a reader loop or throw is mended and told', () => {
  const layers: Groups = [0, 'TABLE', 2, 'LAYER', 70, 1, 0, 'LAYER', 2, 'A', 70, 0, 62, 7, 6, 'CONTINUOUS'];
  const whole = dxf({ tables: [...layers, 0, 'ENDTAB'], entities: square(0, 0, 10) });
  const corners = xy('1,1 2,1 1,2').flatMap(([x = 0, y = 0]) => [0, 'VERTEX', 10, x, 20, y]);
  const polyline = pairText([0, 'POLYLINE', 8, '0', 70, 1, ...corners]);
  const openBlock = pairText([0, 'BLOCK', 2, 'A', 10, 0, 20, 0, ...circle(0, 0, 1)]);

  it('is whole to begin with', () => expect(codesOf(outline(whole))).toEqual([]));

  it.each([
    ['a layer table without ENDTAB', whole.replace('0\nENDTAB\n', '')],
    ['a section without ENDSEC', whole.replace('0\nENDSEC\n', '')],
    ['the last section without ENDSEC', whole.replace('0\nENDSEC\n0\nEOF', '0\nEOF')],
    ['no EOF', whole.replace('0\nEOF\n', '')],
    ['a blank line before a group', whole.replace('0\nLWPOLYLINE', '\n0\nLWPOLYLINE')],
    ['a POLYLINE without SEQEND', whole.replace('0\nENDSEC\n0\nEOF', `${polyline}0\nENDSEC\n0\nEOF`)],
    ['a block without ENDBLK', whole.replace('2\nBLOCKS\n', `2\nBLOCKS\n${openBlock}`)],
    ['an ENDSEC too many', whole.replace('0\nEOF', '0\nENDSEC\n0\nEOF')],
  ])('%s', (_, text) => {
    const drawing = outline(text);
    expect(codesOf(drawing)).toContain(note);
    expect(drawing.box).toEqual({ minX: 0, minY: 0, maxX: 10, maxY: 10 });
  });

  it('two ENTITIES sections are both read', () => {
    const second = pairText([0, 'SECTION', 2, 'ENTITIES', ...circle(5, 5, 2), 0, 'ENDSEC']);
    const drawing = outline(whole.replace('0\nEOF', `${second}0\nEOF`));
    expect(drawing.contours.map(({ depth }) => depth)).toEqual([0, 1]);
    expect(codesOf(drawing)).toEqual([note]);
  });

  it('records outside every section want a decision', () => {
    const stray = whole.replace('0\nEOF', `${pairText(circle(5, 5, 2))}0\nEOF`);
    expect(codesOf(outline(stray))).toEqual(['decide drawing-mended']);
  });

  it('LTYPE dashes before their count, booleans that are neither 0 nor 1, embedded objects', () => {
    const tables: Groups = [
      0,
      'TABLE',
      2,
      'LTYPE',
      70,
      1,
      0,
      'LTYPE',
      2,
      'X',
      49,
      1.5,
      49,
      -1,
      73,
      2,
      0,
      'ENDTAB',
    ];
    const odd = [...circle(5, 5, 2), 290, 'yes', 101, 'Embedded Object', 10, 77, 40, 99];
    const drawing = outline(dxf({ tables, entities: [...square(0, 0, 10), ...odd] }));
    expect(contourArea(drawing.contours[1]?.contour ?? [])).toBeCloseTo(4 * Math.PI, 12);
  });
});

describe('line ends, marks and comments', () => {
  const text = dxf({ entities: square(0, 0, 10) });

  it.each([
    ['CRLF', text.replaceAll('\n', '\r\n')],
    ['CR', text.replaceAll('\n', '\r')],
    ['CR CR LF', text.replaceAll('\n', '\r\r\n')],
    ['byte order mark', `\u00ef\u00bb\u00bf${text}`],
    ['999 comments', `999\nmade by hand\n${text.replace('0\nLWPOLYLINE', '999\n0\n0\nLWPOLYLINE')}`],
    ['padded codes and values', text.replace(/^(\d+)$/gm, '  $1 ')],
    ['text after EOF', `${text}and so on\n`],
  ])('%s', (_, variant) => {
    const drawing = outline(variant);
    expect(drawing.box).toEqual({ minX: 0, minY: 0, maxX: 10, maxY: 10 });
    expect(drawing.findings).toEqual([]);
  });
});

describe('LWPOLYLINE', () => {
  it('keeps its vertices when group 91 stands among them', () => {
    const vertices = xy('0,0 4,0 4,4 0,4').flatMap(([x = 0, y = 0], i) => [10, x, 20, y, 91, i]);
    const drawing = drawn([0, 'LWPOLYLINE', 8, '0', 90, 4, 70, 1, ...vertices]);
    expect(contourArea(drawing.contours[0]?.contour ?? [])).toBe(16);
  });

  it.each([3, 7])('with a count of %i for 4 vertices is read whole and pointed out', (count) => {
    const drawing = drawn(square(0, 0, 4).map((value, i, all) => (all[i - 1] === 90 ? count : value)));
    expect(contourArea(drawing.contours[0]?.contour ?? [])).toBe(16);
    expect(codesOf(drawing)).toEqual(['decide drawing-mended']);
  });
});

it('200,000 lines are read in a few seconds', () => {
  const entities: (string | number)[] = [];
  for (let i = 0; i < 200_000; i++) entities.push(...line(i % 500, i / 500, (i % 500) + 1, i / 500));
  expect(raw(dxf({ entities })).pieces).toHaveLength(200_000);
}, 60_000);
