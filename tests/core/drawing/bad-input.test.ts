import { describe, expect, it } from 'vitest';
import { readDrawing, outlineOf } from '../../../core/drawing/read-drawing';
import { sayProblem } from '../../../core/problem';
import {
  bytes,
  circle,
  codesOf,
  dxf,
  line,
  outline,
  polyline,
  problemOf,
  raw,
  square,
  type Groups,
} from './drawn';

const problem = (text: string) => problemOf(readDrawing(bytes(text)));
const good = dxf({ entities: [...square(0, 0, 10), ...line(20, 0, 30, 0)] });

describe('what is not a DXF gets its own sentence', () => {
  it.each([
    ['', 'drawing-empty', /empty/],
    ['\n  \r\n', 'drawing-empty', /blanks/],
    ['AutoCAD Binary DXF\n\u001a\u0000rest', 'drawing-damaged', /ASCII DXF/],
    ['AutoCAD Binary DXF\r\n\u001a\u0000', 'drawing-not-dxf', /no sections/],
    ['AC1032\u0000\u0000', 'drawing-is-dwg', /DWG/],
    ['%PDF-1.7\nrest', 'drawing-not-dxf', /"%PDF-1.7"/],
    ['{"format":"diewright-job"}', 'drawing-not-dxf', /group code/],
    ['\u00ff\u00fe0\u0000', 'drawing-not-dxf', /UTF-16/],
    ['  0\nSECTION\u0000\n', 'drawing-not-dxf', /binary data/],
    ['0\n1\n2\n3\n', 'drawing-not-dxf', /no sections/],
    ['0\nSECTION\n2\nHEADER\n0\nENDSEC\n0\nEOF\n', 'drawing-not-dxf', /no ENTITIES/],
  ])('%j', (text, code, say) => {
    expect(problem(text).code).toBe(code);
    expect(sayProblem(problem(text))).toMatch(say);
    expect(problem(text).whatToDo).not.toBe('');
  });
});

describe('a file that is cut off', () => {
  it('at any byte: a problem, or a finding that says so; never an exception, never silence', () => {
    const whole = outline(good);
    for (let end = 1; end < good.length - 5; end++) {
      const read = readDrawing(bytes(good.slice(0, end)));
      if (!read.ok) {
        expect(read.problem.what).not.toBe('');
        continue;
      }
      expect(read.value.damage.length).toBeGreaterThan(0);
      // Whatever is read without a person being asked is the whole drawing.
      if (read.value.damage.every(({ weight }) => weight === 'note')) {
        expect(read.value.pieces).toHaveLength(whole.contours.length + 1);
      }
    }
  });

  it('in the middle of a polyline is a problem with its line', () => {
    const at = good.indexOf('\n20\n10') + 1;
    expect(problem(good.slice(0, at))).toMatchObject({
      code: 'drawing-cut-off',
      where: expect.stringMatching(/^line \d+$/),
    });
  });

  it('after a whole entity wants a decision; without EOF only, it is a note', () => {
    const afterSquare = good.slice(0, good.indexOf('0\nLINE'));
    expect(codesOf(outline(afterSquare))).toEqual(['decide drawing-mended']);
    expect(codesOf(outline(good.replace('0\nEOF\n', '')))).toContain('note drawing-mended');
  });

  it('in the header is a problem', () => {
    expect(problem('0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n').code).toBe('drawing-cut-off');
  });
});

describe('numbers that are none are refused with their line', () => {
  it.each(['nan', 'NaN', 'inf', '1e308', '1e999', '1,5', '1D2', '', '0x10', '12abc', '1e10'])(
    '%j',
    (number) => {
      const found = problem(
        dxf({ entities: [...square(0, 0, 10), ...circle(3, 4, 0).slice(0, -1), number] }),
      );
      expect(found.code).toBe('drawing-bad-number');
      const text = dxf({ entities: [...square(0, 0, 10), ...circle(3, 4, 0).slice(0, -1), number] });
      const lineOfRadius =
        text.split('\n').findIndex((row, i, rows) => rows[i - 1] === '40' && row === number) + 1;
      expect(found.where).toBe(`line ${lineOfRadius}`);
    },
  );

  it('a decimal comma is named as such', () => {
    expect(problem(dxf({ entities: line(0, 0, 1, 0).map((v) => (v === 1 ? '1,5' : v)) })).whatToDo).toMatch(
      /comma/,
    );
  });

  it('whole numbers too, in vertices and in blocks', () => {
    const vertex: Groups = [0, 'POLYLINE', 8, '0', 70, 1, 0, 'VERTEX', 10, 'nan', 20, 0, 0, 'SEQEND'];
    expect(problem(dxf({ entities: vertex })).code).toBe('drawing-bad-number');
    expect(problem(dxf({ blocks: [0, 'BLOCK', 2, 'A', 10, '1,5', 20, 0, 0, 'ENDBLK'] })).code).toBe(
      'drawing-bad-number',
    );
    expect(problem(dxf({ entities: [0, 'LWPOLYLINE', 90, 2, 70, '1.5', 10, 0, 20, 0] })).code).toBe(
      'drawing-bad-number',
    );
  });

  it('exponents, signs, padding and bare points are numbers; what is not read may hold anything', () => {
    const padded = '0\nCIRCLE\n8\n0\n 10\n  +1.5E+1 \n 20\n-.5\n 40\n 2.\n';
    const text = dxf({ entities: [] }).replace(
      '2\nENTITIES\n',
      `2\nENTITIES\n${padded}0\nTEXT\n40\nnan\n290\nyes\n`,
    );
    expect(outline(text).box).toEqual({ minX: 13, minY: -2.5, maxX: 17, maxY: 1.5 });
  });
});

describe('damaged structure', () => {
  it('a code that is no number is refused with its line', () => {
    const text = good.replace('8\n0\n', 'layer\n0\n');
    const at = text.split('\n').indexOf('layer') + 1;
    expect(problem(text)).toMatchObject({ code: 'drawing-damaged', where: `line ${at}` });
  });

  it('more entities than fit, by arrays in arrays, are refused in time', () => {
    const blocks: Groups = [
      ...[0, 'BLOCK', 2, 'A', 10, 0, 20, 0, ...circle(0, 0, 1), 0, 'ENDBLK'],
      ...[
        0,
        'BLOCK',
        2,
        'B',
        10,
        0,
        20,
        0,
        0,
        'INSERT',
        2,
        'A',
        10,
        0,
        20,
        0,
        70,
        30000,
        71,
        30000,
        0,
        'ENDBLK',
      ],
    ];
    const entities: Groups = [0, 'INSERT', 2, 'B', 10, 0, 20, 0, 70, 30000, 71, 30000];
    expect(problem(dxf({ blocks, entities })).code).toBe('drawing-too-large');
  });

  it('no closed contour: says how far the ends are apart', () => {
    const open = raw(
      dxf({
        entities: polyline(false, [
          [0, 0],
          [10, 0],
          [10, 10],
          [0, 10],
          [0, 0.02],
        ]),
      }),
    );
    const found = problemOf(outlineOf(open, 'mm', 0.005));
    expect(found.code).toBe('no-closed-contour');
    expect(found.whatToDo).toMatch(/0\.02 mm/);
    expect(problemOf(outlineOf(raw(dxf({})), 'mm', 0.005)).where).toBe('no entities at all');
    const text = raw(dxf({ entities: [0, 'TEXT', 8, 'NOTES'] }));
    expect(problemOf(outlineOf(text, 'mm', 0.005)).where).toMatch(/TEXT on layer NOTES: text/);
  });

  it('a unit that makes the drawing hundreds of kilometres wide is refused', () => {
    const wide = raw(dxf({ entities: square(0, 0, 1000) }));
    expect(problemOf(outlineOf(wide, 'km', 0.005)).code).toBe('drawing-too-far');
    expect(problemOf(outlineOf(wide, 'nm', 0.005)).code).toBe('no-closed-contour');
  });

  it('random damage never throws', () => {
    let state = 12345;
    const next = (below: number) => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return state % below;
    };
    for (let run = 0; run < 400; run++) {
      const broken = bytes(good);
      for (let k = 0; k <= run % 5; k++) broken[next(broken.length)] = next(256);
      const read = readDrawing(broken);
      if (read.ok) outlineOf(read.value, 'mm', 0.005);
      else expect(sayProblem(read.problem)).toMatch(/\.$/);
    }
  });
});
