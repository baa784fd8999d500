import { describe, expect, it } from 'vitest';
import { contourArea } from '../../../core/geometry/contour-measures';
import { outlineOf, readDrawing } from '../../../core/drawing/read-drawing';
import { binaryDxf } from './binary-dxf';
import {
  bytes,
  circle,
  codesOf,
  dxf,
  dxfGroups,
  line,
  outline,
  pairText,
  problemOf,
  raw,
  square,
  valueOf,
  xy,
  type Groups,
} from './drawn';

// What general readers of DXF are known to get wrong in files, trap by trap; what they get wrong in entities stands in
// reader-traps-in-entities.test.ts.
const note = 'note drawing-mended';
const layers: Groups = [0, 'TABLE', 2, 'LAYER', 70, 1, 0, 'LAYER', 2, 'A', 70, 0, 62, 7, 6, 'CONTINUOUS'];
const whole = dxf({ tables: [...layers, 0, 'ENDTAB'], entities: square(0, 0, 10) });
const plain = { minX: 0, minY: 0, maxX: 10, maxY: 10 };
const mended = (text: string): void => {
  const drawing = outline(text);
  expect(codesOf(drawing)).toContain(note);
  expect(drawing.box).toEqual(plain);
};

it('the file that is damaged below is whole to begin with', () =>
  expect(codesOf(outline(whole))).toEqual([]));

describe('trap: binary DXF', () => {
  it('reads as the same drawing', () => {
    const read = valueOf(readDrawing(binaryDxf(dxfGroups({ entities: square(0, 0, 10) }), 2)));
    expect(valueOf(outlineOf(read, 'mm', 0.005)).box).toEqual(plain);
  });
});

describe('trap: code pages up to R2004, UTF-8 from R2007, \\U+XXXX', () => {
  const layerIn = (version: string, name: string): string | undefined =>
    outline(
      dxf({
        header: [9, '$INSUNITS', 70, 4, 9, '$ACADVER', 1, version, 9, '$DWGCODEPAGE', 3, 'ANSI_1251'],
        entities: square(0, 0, 10, name),
      }),
    ).contours[0]?.layer;

  it.each([
    ['AC1009', '\u00c2\u00e8\u00e4', 'Вид'],
    ['AC1018', '\u00c2\u00e8\u00e4', 'Вид'],
    ['AC1021', '\u00d0\u0092\u00d0\u00b8\u00d0\u00b4', 'Вид'],
    ['AC1032', '\u00d0\u0092\u00d0\u00b8\u00d0\u00b4', 'Вид'],
    ['AC1015', '\\U+0412\\U+0438\\U+0434', 'Вид'],
  ])('%s', (version, name, read) => expect(layerIn(version, name)).toBe(read));
});

describe('trap: missing ENDSEC or EOF, text cut off', () => {
  it.each([
    ['a section without ENDSEC', whole.replace('0\nENDSEC\n', '')],
    ['the last section without ENDSEC', whole.replace('0\nENDSEC\n0\nEOF', '0\nEOF')],
    ['no EOF', whole.replace('0\nEOF\n', '')],
    ['an ENDSEC too many', whole.replace('0\nEOF', '0\nENDSEC\n0\nEOF')],
  ])('%s is put in and told', (_, text) => mended(text));

  it('cut off after a whole entity a person is asked, within one it is refused with its line', () => {
    const more = dxf({ entities: [...square(0, 0, 10), ...line(20, 0, 30, 0)] });
    expect(codesOf(outline(more.slice(0, more.indexOf('0\nLINE'))))).toEqual(['decide drawing-mended']);
    const torn = problemOf(readDrawing(bytes(more.slice(0, more.indexOf('20\n10') + 3))));
    expect(torn).toMatchObject({ code: 'drawing-cut-off', where: expect.stringMatching(/^line \d+$/) });
  });
});

describe('trap: endless loops', () => {
  const corners = xy('1,1 2,1 1,2').flatMap(([x = 0, y = 0]) => [0, 'VERTEX', 10, x, 20, y]);
  const polyline = pairText([0, 'POLYLINE', 8, '0', 70, 1, ...corners]);

  it('a layer table without ENDTAB', () => mended(whole.replace('0\nENDTAB\n', '')));
  it('a POLYLINE without SEQEND', () =>
    mended(whole.replace('0\nENDSEC\n0\nEOF', `${polyline}0\nENDSEC\n0\nEOF`)));
  it('a block without ENDBLK', () => {
    const open = pairText([0, 'BLOCK', 2, 'A', 10, 0, 20, 0, ...circle(0, 0, 1)]);
    mended(whole.replace('2\nBLOCKS\n', `2\nBLOCKS\n${open}`));
  });
});

describe('trap: LTYPE dashes before their count', () => {
  it('are read', () => {
    const type: Groups = [0, 'LTYPE', 2, 'X', 49, 1.5, 49, -1, 73, 2];
    const tables: Groups = [0, 'TABLE', 2, 'LTYPE', 70, 1, ...type, 0, 'ENDTAB'];
    const drawing = outline(dxf({ tables, entities: [...square(0, 0, 10), ...circle(5, 5, 1), 6, 'X'] }));
    expect(drawing.unused.map(({ reason }) => reason)).toEqual(['line type X: not an edge']);
  });
});

describe('trap: a boolean that is neither 0 nor 1, an embedded object', () => {
  it('do no harm', () => {
    const odd = [...circle(5, 5, 2), 290, 'yes', 101, 'Embedded Object', 10, 77, 40, 99];
    const drawing = outline(dxf({ entities: [...square(0, 0, 10), ...odd] }));
    expect(contourArea(drawing.contours[1]?.contour ?? [])).toBeCloseTo(4 * Math.PI, 12);
  });
});

describe('trap: a blank line that shifts code and value', () => {
  it('is passed over and told', () => mended(whole.replace('0\nLWPOLYLINE', '\n0\nLWPOLYLINE')));
});

describe('trap: 1,5 read as 1, 1D2 as 1, nan as NaN', () => {
  it.each(['1,5', '1D2', 'nan', 'inf', '0x10', '12abc', ''])('%j is refused with its line', (number) => {
    const text = dxf({ entities: [...square(0, 0, 10), ...circle(3, 4, 0).slice(0, -1), number] });
    const row = text.split('\n').findIndex((value, i, rows) => rows[i - 1] === '40' && value === number) + 1;
    expect(problemOf(readDrawing(bytes(text)))).toMatchObject({
      code: 'drawing-bad-number',
      where: `line ${row}`,
    });
  });
});

describe('no trap: line ends, marks, comments, padding, exponents, text after EOF', () => {
  const text = dxf({ entities: square(0, 0, 10) });

  it.each([
    ['CRLF', text.replaceAll('\n', '\r\n')],
    ['CR', text.replaceAll('\n', '\r')],
    ['CR CR LF', text.replaceAll('\n', '\r\r\n')],
    ['byte order mark', `\u00ef\u00bb\u00bf${text}`],
    ['999 comments', `999\nmade by hand\n${text.replace('0\nLWPOLYLINE', '999\n0\n0\nLWPOLYLINE')}`],
    ['padded codes and values', text.replace(/^(\d+)$/gm, '  $1 ')],
    ['exponents', text.replaceAll('\n10\n10\n', '\n10\n+1.0E+1\n')],
    ['text after EOF', `${text}and so on\n`],
  ])('%s', (_, variant) => {
    const drawing = outline(variant);
    expect(drawing.box).toEqual(plain);
    expect(drawing.findings).toEqual([]);
  });
});

describe('trap: two ENTITIES sections, of which the last wins', () => {
  it('both are read, and it is told', () => {
    const second = pairText([0, 'SECTION', 2, 'ENTITIES', ...circle(5, 5, 2), 0, 'ENDSEC']);
    const drawing = outline(whole.replace('0\nEOF', `${second}0\nEOF`));
    expect(drawing.contours.map(({ depth }) => depth)).toEqual([0, 1]);
    expect(codesOf(drawing)).toEqual([note]);
  });

  it('records outside every section want a decision', () => {
    const stray = whole.replace('0\nEOF', `${pairText(circle(5, 5, 2))}0\nEOF`);
    expect(codesOf(outline(stray))).toEqual(['decide drawing-mended']);
  });
});

describe('trap: units absent, 0, or plainly wrong', () => {
  const stating = (header: Groups) => raw(dxf({ header, entities: square(0, 0, 80) })).statedUnit;

  it.each([
    ['absent', []],
    ['0', [9, '$INSUNITS', 70, 0]],
    ['light years', [9, '$INSUNITS', 70, 19]],
    ['$MEASUREMENT alone', [9, '$MEASUREMENT', 70, 1]],
  ] as const)('%s states none, so that a person is asked', (_, header) => expect(stating(header)).toBeNull());
});

describe('trap: the cost of 200,000 entities', () => {
  it('all of them are read', () => {
    const entities: (string | number)[] = [];
    for (let i = 0; i < 200_000; i++) entities.push(...line(i % 500, i / 500, (i % 500) + 1, i / 500));
    expect(raw(dxf({ entities })).pieces).toHaveLength(200_000);
  }, 60_000);
});
