import { expect, test } from 'vitest';
import { likelyUnit } from '../../../core/inspect/likely-unit';
import { readPoints } from '../../../core/inspect/read-points';

const read = (text: string) => {
  const list = readPoints(text);
  if (!list.ok) throw new Error(list.problem.what);
  return list.value;
};
const points = (text: string) => read(text).points.map(({ x, y, id, feature }) => [x, y, id, feature]);
const wanted = [
  [1.5, -2.25, '1', ''],
  [3, 0.5, '2', ''],
];

test.each([
  ['commas', '1.5,-2.25\n3,0.5\n'],
  ['commas and blanks', '1.5, -2.25\r\n3, 0.5'],
  ['semicolons, decimal points', '1.5;-2.25\n3;.5'],
  ['semicolons, decimal commas', '1,5;-2,25\n3;0,5'],
  ['tabs, decimal commas', '1,5\t-2,25\n3,0\t0,5'],
  ['blanks, decimal commas', '1,5 -2,25\n3,0   0,5'],
  ['blanks, decimal points', ' 1.5 -2.25\n 3.0 0.5\n\n'],
  ['quotes', '"1.5","-2.25"\n"3","0.5"'],
  ['a mark of byte order', '\uFEFF1.5;-2.25\n3;0.5'],
  ['exponents', '15e-1,-2.25E0\n3,5.0e-1'],
])('%s', (_name, text) => {
  expect(points(text)).toEqual(wanted);
});

test('names and features in the third and fourth column, or where the heading says', () => {
  expect(points('1;2;P7;die\n3;4;P8;punch')).toEqual([
    [1, 2, 'P7', 'die'],
    [3, 4, 'P8', 'punch'],
  ]);
  expect(points('Feature;Point;Y;X\ndie;P7;2,0;1,0\npunch;P8;4,5;3,5')).toEqual([
    [1, 2, 'P7', 'die'],
    [3.5, 4.5, 'P8', 'punch'],
  ]);
  expect(points('x,y,z,id\n1.5,2.5,0.1,a\n')).toEqual([[1.5, 2.5, 'a', '']]);
});

test('the unit, where the heading or a remark states it', () => {
  expect(read('x [mm];y [mm]\n1;2').unit).toBe('mm');
  expect(read('X (in),Y (in)\n0.5,1.25').unit).toBe('inch');
  expect(read('# measured in inches\n0.5,1.25').unit).toBe('inch');
  expect(read('1.5;2').unit).toBeNull();
});

test('what is no point is listed; what begins like one and is none is a problem with its line', () => {
  const list = read('# from the bench\nx;y\n1;2\nend of list\n');
  expect(list.points).toHaveLength(1);
  expect(list.skipped).toEqual([
    { line: 1, text: '# from the bench' },
    { line: 4, text: 'end of list' },
  ]);
  const bad = readPoints('1;2\n3;four\n');
  expect(bad.ok ? null : bad.problem).toMatchObject({ code: 'points-bad-line', where: 'line 2' });
  for (const text of ['', 'nothing here', 'x;y\n']) {
    const empty = readPoints(text);
    expect(empty.ok ? null : empty.problem.code).toBe('points-none');
  }
});

test('commas that may be decimal commas are not guessed at', () => {
  const doubtful = readPoints('1,5,2,5\n3,0,4,5\n');
  expect(doubtful.ok ? null : doubtful.problem.code).toBe('points-ambiguous');
  // A name in one line settles it.
  expect(points('1,5,2,5\n3,0,P2,5\n')).toEqual([
    [1, 5, '2', '5'],
    [3, 0, 'P2', '5'],
  ]);
});

test('the likely unit is the one in which points are as large as the profile', () => {
  const profile = { minX: 0, minY: 0, maxX: 40, maxY: 20 };
  expect(
    likelyUnit(
      [
        { x: 1, y: 1 },
        { x: 39, y: 18 },
      ],
      profile,
    ),
  ).toBe('mm');
  expect(
    likelyUnit(
      [
        { x: 0, y: 0 },
        { x: 1.55, y: 0.75 },
      ],
      profile,
    ),
  ).toBe('inch');
  expect(
    likelyUnit(
      [
        { x: 0, y: 0 },
        { x: 400, y: 1 },
      ],
      profile,
    ),
  ).toBeNull();
  expect(likelyUnit([{ x: 3, y: 3 }], profile)).toBeNull();
});

test('a point farther out than any part is large is a slip, said with its line', () => {
  const list = readPoints('x;y\n1;2\n3;1e20\n');
  expect(list.ok ? null : list.problem).toMatchObject({ code: 'points-too-far', where: 'line 3' });
  expect(readPoints('99999;-99999\n').ok).toBe(true);
});
