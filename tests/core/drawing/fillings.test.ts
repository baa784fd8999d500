import { describe, expect, it } from 'vitest';
import { contourArea } from '../../../core/geometry/contour-measures';
import { outlineOf } from '../../../core/drawing/read-drawing';
import { drawn, line, outline, dxf, block, problemOf, raw, square, type Groups } from './drawn';

const areas = (entities: Groups): number[] =>
  drawn(entities).contours.map(({ contour }) => contourArea(contour));

const hatch = (...paths: Groups[]): Groups => [
  ...[
    0,
    'HATCH',
    8,
    'FILL',
    10,
    0,
    20,
    0,
    30,
    0,
    210,
    0,
    220,
    0,
    230,
    1,
    2,
    'SOLID',
    70,
    1,
    71,
    0,
    91,
    paths.length,
  ],
  ...paths.flat(),
  ...[75, 0, 76, 1, 98, 1, 10, 3, 20, 3],
];
const polyPath = (bulged: boolean, corners: readonly (readonly number[])[]): Groups => [
  ...[92, 2, 72, bulged ? 1 : 0, 73, 1, 93, corners.length],
  ...corners.flatMap(([x = 0, y = 0, bulge = 0]) => [10, x, 20, y, ...(bulged ? [42, bulge] : [])]),
  ...[97, 0],
];
const edges = (...all: Groups[]): Groups => [92, 1, 93, all.length, ...all.flat(), 97, 0];

describe('where nothing else closes, the boundary of a HATCH is the outline', () => {
  it('as polylines with and without bulges, and says so', () => {
    const drawing = drawn([
      ...hatch(
        polyPath(true, [
          [0, 0],
          [20, 0, 1],
          [20, 10],
          [0, 10],
        ]),
        polyPath(false, [
          [4, 4],
          [6, 4],
          [6, 6],
          [4, 6],
        ]),
      ),
      ...line(0, 0, 20, 0),
    ]);
    expect(drawing.contours.map(({ contour, depth }) => [contourArea(contour), depth])).toEqual([
      [expect.closeTo(200 + 12.5 * Math.PI, 9), 0],
      [expect.closeTo(4, 12), 1],
    ]);
    const told = drawing.findings.find(({ code }) => code === 'outline-from-filling');
    expect(told).toMatchObject({ weight: 'decide', message: expect.stringMatching(/2 boundaries of HATCH/) });
  });

  it('as edges: lines, arcs both ways, a part of an ellipse, a spline', () => {
    const slot = edges(
      [72, 1, 10, 0, 20, 0, 11, 10, 21, 0],
      [72, 2, 10, 10, 20, 2, 40, 2, 50, 270, 51, 90, 73, 1],
      [72, 1, 10, 10, 20, 4, 11, 0, 21, 4],
      // Clockwise from (0, 4) to (0, 0) about (0, 2): its angles count clockwise, from 270° to 90°.
      [72, 2, 10, 0, 20, 2, 40, 2, 50, 270, 51, 90, 73, 0],
    );
    expect(areas(hatch(slot))[0]).toBeCloseTo(40, 9);
    const half = edges(
      [72, 3, 10, 0, 20, 0, 11, 6, 21, 0, 40, 0.5, 50, 0, 51, 180, 73, 1],
      [72, 1, 10, -6, 20, 0, 11, 6, 21, 0],
    );
    expect(Math.abs((areas(hatch(half))[0] ?? 0) - 9 * Math.PI)).toBeLessThan(0.02);
    const curve = [72, 4, 94, 2, 73, 0, 74, 0, 95, 6, 96, 3, ...[0, 0, 0, 1, 1, 1].flatMap((k) => [40, k])];
    const spline = edges(
      [...curve, 10, 0, 20, 0, 10, 5, 20, 6, 10, 10, 20, 0],
      [72, 1, 10, 10, 20, 0, 11, 0, 21, 0],
    );
    // Parabola with its apex at half the control point's height: 2/3 · 10 · 3.
    expect(Math.abs((areas(hatch(spline))[0] ?? 0) - 20)).toBeLessThan(0.02);
  });

  it('mirrored by its extrusion', () => {
    const path = polyPath(false, [
      [1, 0],
      [5, 0],
      [5, 3],
    ]);
    const mirrored = hatch(path).map((value, i, all) => (all[i - 1] === 230 ? -1 : value));
    expect(drawn(mirrored).box).toEqual({ minX: -5, minY: 0, maxX: -1, maxY: 3 });
  });

  it('where something closes, it stays a filling', () => {
    const drawing = drawn([
      ...hatch(
        polyPath(false, [
          [1, 1],
          [2, 1],
          [2, 2],
        ]),
      ),
      ...square(0, 0, 10),
    ]);
    expect(drawing.contours).toHaveLength(1);
    expect(drawing.unused).toEqual([
      { layer: 'FILL', kind: 'HATCH', reason: 'filling, not an edge', count: 1 },
    ]);
  });

  it('with nonsense in it, it is counted and no more', () => {
    const broken = hatch(edges([72, 9]), []).map((value, i, all) => (all[i - 1] === 93 ? 1_000_000 : value));
    expect(drawn([...broken, ...square(0, 0, 10)]).unused[0]?.kind).toBe('HATCH');
  });
});

describe('SOLID and TRACE', () => {
  const corners: Groups = [10, 0, 20, 0, 11, 8, 21, 0, 12, 0, 22, 3, 13, 8, 23, 3];

  it.each(['SOLID', 'TRACE'])('%s: its corners in the order 1, 2, 4, 3 hold 24', (kind) => {
    expect(areas([0, kind, 8, '0', ...corners])).toEqual([expect.closeTo(24, 12)]);
  });

  it('with three corners is a triangle', () => {
    const triangle = [0, 'SOLID', 8, '0', ...corners.slice(0, 12), 13, 0, 23, 3];
    expect(areas(triangle)).toEqual([expect.closeTo(12, 12)]);
  });
});

describe('MLINE', () => {
  it('closed: one contour for each of its lines', () => {
    // A square of side 20 about the origin, its two lines 1 to either side along the mitres.
    const corner = (x: number, y: number, mitreX: number, mitreY: number): Groups => [
      ...[11, x, 21, y, 31, 0, 12, 1, 22, 0, 13, mitreX, 23, mitreY],
      ...[74, 2, 41, Math.SQRT2, 41, 0, 75, 0, 74, 2, 41, -Math.SQRT2, 41, 0, 75, 0],
    ];
    const d = Math.SQRT1_2;
    const mline: Groups = [
      ...[0, 'MLINE', 8, '0', 2, 'STANDARD', 40, 1, 70, 0, 71, 3, 72, 4, 73, 2, 10, -10, 20, -10, 30, 0],
      ...[
        ...corner(-10, -10, -d, -d),
        ...corner(10, -10, d, -d),
        ...corner(10, 10, d, d),
        ...corner(-10, 10, -d, d),
      ],
    ];
    expect(areas(mline)).toEqual([expect.closeTo(22 * 22, 9), expect.closeTo(18 * 18, 9)]);
  });

  it('open: its lines are edges like any other', () => {
    const mline: Groups = [
      ...[0, 'MLINE', 8, '0', 40, 1, 70, 0, 71, 1, 72, 2, 73, 2, 10, 0, 20, 0],
      ...[11, 0, 21, 0, 12, 1, 22, 0, 13, 0, 23, 1, 74, 1, 41, 2, 75, 0, 74, 1, 41, -2, 75, 0],
      ...[11, 9, 21, 0, 12, 1, 22, 0, 13, 0, 23, 1, 74, 1, 41, 2, 75, 0, 74, 1, 41, -2, 75, 0],
    ];
    expect(areas([...mline, ...line(0, -2, 0, 2), ...line(9, -2, 9, 2)])).toEqual([expect.closeTo(36, 12)]);
  });
});

describe('bodies', () => {
  it('are named with what to ask the customer for, in blocks too, not in paper space', () => {
    const region: Groups = [0, 'REGION', 8, 'PART', 1, 'secret words'];
    const drawing = outline(
      dxf({
        blocks: block('B', [0, '3DSOLID', 8, '0']),
        entities: [
          ...square(0, 0, 9),
          ...region,
          ...region,
          67,
          1,
          0,
          'INSERT',
          8,
          'X',
          2,
          'B',
          10,
          0,
          20,
          0,
        ],
      }),
    );
    const told = drawing.findings.filter(({ code }) => code === 'drawing-unsupported');
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ weight: 'decide' });
    expect(told[0]?.message).toMatch(/1 3DSOLID on layer X; 1 REGION on layer PART/);
    expect(told[0]?.cures[0]?.say).toMatch(/[Aa]sk the customer/);
  });

  it('and alone in a drawing, the problem says what to ask for', () => {
    const only = outlineOf(raw(dxf({ entities: [0, 'REGION', 8, 'PART'] })), 'mm', 0.005);
    expect(problemOf(only)).toMatchObject({
      code: 'no-closed-contour',
      whatToDo: expect.stringMatching(/Ask the customer to explode/),
    });
  });
});
