import { describe, expect, it } from 'vitest';
import { readDimensionText } from '../../../core/drawing/read-dimension-text';
import { circle, dxf, outline, polyline, square, xy, type Groups } from './drawn';

const level = (x0: number, x1: number, y: number, more: Groups = []): Groups => [
  ...[0, 'DIMENSION', 8, 'DIM', 2, '*D1', 10, x1, 20, y - 10, 11, (x0 + x1) / 2, 21, y - 10, 70, 32],
  ...[...more, 13, x0, 23, y, 14, x1, 24, y, 50, 0],
];
const round = (type: 3 | 4, from: readonly number[], to: readonly number[], more: Groups = []): Groups => [
  ...[0, 'DIMENSION', 8, 'DIM', 2, '*D2', 10, from[0] ?? 0, 20, from[1] ?? 0, 70, 32 + type],
  ...[...more, 15, to[0] ?? 0, 25, to[1] ?? 0, 40, 5],
];
const part = [...square(0, 0, 25), ...circle(10, 10, 4)];
const drawing = (dimensions: Groups, more: { tables?: Groups; header?: Groups } = {}) =>
  outline(dxf({ ...more, entities: [...part, ...dimensions] }));
const disagreeing = (dimensions: Groups, more = {}) =>
  drawing(dimensions, more).findings.filter(({ code }) => code === 'dimension-disagrees');

describe('dimensions that agree with the geometry', () => {
  it('say nothing, and stand beside their contour', () => {
    const all = drawing([
      ...level(0, 25, 0, [42, 25]),
      ...level(0, 25, 0, [1, '<> TYP']),
      ...level(0, 25, 0, [1, '25.0']),
      ...round(3, [6, 10], [14, 10], [42, 8]),
      ...round(4, [10, 10], [10, 14], [1, 'R4']),
    ]);
    expect(all.findings.filter(({ code }) => code === 'dimension-disagrees')).toEqual([]);
    expect(all.dimensions.map(({ kind, measured, contourId }) => `${kind} ${measured} ${contourId}`)).toEqual(
      [...['length 25 c1', 'length 25 c1', 'length 25 c1', 'diameter 8 c2', 'radius 4 c2']],
    );
  });

  it('rounded to the digits that are written', () => {
    const third = 25 / 3;
    expect(disagreeing(level(0, third, 0, [1, '8.3']))).toEqual([]);
    expect(disagreeing(level(0, third, 0, [1, '8.33']))).toEqual([]);
    expect(disagreeing(level(0, third, 0, [1, '8.34']))).toHaveLength(1);
  });

  it('in the numbers that are shown: a scale of ten, inches', () => {
    const style: Groups = [0, 'TABLE', 2, 'DIMSTYLE', 0, 'DIMSTYLE', 2, 'TEN', 144, 10, 0, 'ENDTAB'];
    expect(disagreeing(level(0, 25, 0, [3, 'ten', 1, '250']), { tables: style })).toEqual([]);
    expect(disagreeing(level(0, 25, 0, [3, 'ten', 42, 250]), { tables: style })).toEqual([]);
    const inch = drawing(level(0, 25, 0, [1, '25.00']), { header: [9, '$INSUNITS', 70, 1] });
    expect(inch.dimensions[0]).toMatchObject({ nominal: 635, measured: 635 });
  });

  it('level dimensions across, aligned ones straight', () => {
    const aligned = level(0, 3, 0, [42, 5]).map((value, i, all) =>
      all[i - 1] === 70 ? 33 : all[i - 1] === 24 ? 4 : value,
    );
    expect(disagreeing(aligned)).toEqual([]);
    const across = level(0, 3, 0, [42, 3]).map((value, i, all) => (all[i - 1] === 24 ? 4 : value));
    expect(disagreeing(across)).toEqual([]);
  });
});

describe('dimensions that disagree are for a person to decide', () => {
  it('a number written over the measured one: not to scale', () => {
    const [finding] = disagreeing(level(0, 25, 0, [1, '25.4']));
    expect(finding).toMatchObject({ weight: 'decide', contourId: 'c1', title: 'Dimension not to scale' });
    expect(finding?.message).toMatch(/says "25\.4", which is 25\.4 mm \(1 in\), but its points are 25 mm/);
    expect(finding?.place).toMatchObject({ x: 12.5, y: -10 });
  });

  it('a measured value from before the geometry was changed', () => {
    const [finding] = disagreeing(level(0, 25, 0, [42, 24.5]));
    expect(finding).toMatchObject({ title: 'Dimension out of date' });
    expect(finding?.message).toMatch(/measured 24\.5 mm .* now 25 mm/);
  });

  it('a diameter written on a radius is read as one', () => {
    expect(disagreeing(round(4, [10, 10], [10, 14], [1, '%%c8']))).toEqual([]);
    expect(disagreeing(round(4, [10, 10], [10, 14], [1, '%%c9']))).toHaveLength(1);
  });
});

describe('stated deviations are kept beside the contour', () => {
  const override = (plus: number, minus: number): Groups => [
    ...[
      1001,
      'ACAD',
      1000,
      'DSTYLE',
      1002,
      '{',
      1070,
      71,
      1070,
      1,
      1070,
      47,
      1040,
      plus,
      1070,
      48,
      1040,
      minus,
      1002,
      '}',
    ],
  ];
  const first = (dimension: Groups, more = {}) => drawing(dimension, more).dimensions[0];

  it('in the text, as MTEXT stacks them, in the style, as an override', () => {
    expect(first(level(0, 25, 0, [1, '<>%%p0.05']))?.tolerance).toEqual({ plus: 0.05, minus: -0.05 });
    expect(first(level(0, 25, 0, [1, '25{\\H0.7x;\\S+0.10^-0.02;}']))?.tolerance).toEqual({
      plus: 0.1,
      minus: -0.02,
    });
    const style: Groups = [
      ...[0, 'TABLE', 2, 'DIMSTYLE', 0, 'DIMSTYLE', 2, 'TOL', 71, 1, 47, 0.2, 48, -0.1, 0, 'ENDTAB'],
    ];
    expect(first(level(0, 25, 0, [3, 'TOL']), { tables: style })?.tolerance).toEqual({
      plus: 0.2,
      minus: 0.1,
    });
    expect(first([...level(0, 25, 0), ...override(0.03, 0.01)])?.tolerance).toEqual({
      plus: 0.03,
      minus: -0.01,
    });
  });

  it('and the shift that puts the contour into their middle', () => {
    // 25 +0.10 −0.02: its middle is 25.04; each side moves by half of 0.04.
    expect(first(level(0, 25, 0, [1, '25 +0.10/-0.02']))?.sizeShift).toBeCloseTo(0.02, 12);
    // A radius of 4 +0.1 0 is in its middle at 4.05.
    expect(first(round(4, [10, 10], [10, 14], [1, 'R4 +0.1/0']))?.sizeShift).toBeCloseTo(0.05, 12);
    expect(first(level(0, 25, 0))).toMatchObject({ tolerance: null, sizeShift: 0 });
  });

  it('by the edges it stands on: across, over a gap, between edges that face one way, beside the contour', () => {
    // A plate 40 × 20 with a slot from x 10 to 14 and a step at x 30, by its own geometry.
    const plate = polyline(true, xy('0,0 40,0 40,8 30,8 30,20 14,20 14,12 10,12 10,20 0,20'));
    const shiftOf = (x0: number, x1: number, y: number) =>
      outline(dxf({ entities: [...plate, ...level(x0, x1, y, [1, '<> +0.2/0'])] })).dimensions[0];
    expect(shiftOf(0, 40, 0)).toMatchObject({ growth: 2, sizeShift: expect.closeTo(0.05, 12) });
    // Measured the other way round, and drawn from corner to corner.
    expect(shiftOf(40, 0, 0)).toMatchObject({ growth: 2, sizeShift: expect.closeTo(0.05, 12) });
    expect(shiftOf(10, 14, 20)).toMatchObject({ growth: -2, sizeShift: expect.closeTo(-0.05, 12) });
    expect(shiftOf(30, 40, 8)).toMatchObject({ growth: 0, sizeShift: 0 });
    expect(shiftOf(0, 47, 0)).toMatchObject({ growth: 0, sizeShift: 0, contourId: null });
    // The radius of an inside corner becomes smaller where the part grows.
    const bite = polyline(true, [
      [0, 0, 0],
      [40, 0, 0],
      [40, 16, -Math.tan(Math.PI / 8)],
      [36, 20, 0],
      [0, 20, 0],
    ]);
    const radius = round(4, [40, 20], [40 - 4 * Math.SQRT1_2, 20 - 4 * Math.SQRT1_2], [1, 'R4 +0.1/0']);
    expect(outline(dxf({ entities: [...bite, ...radius] })).dimensions[0]).toMatchObject({
      growth: expect.closeTo(-1, 9),
      sizeShift: expect.closeTo(-0.05, 9),
    });
  });
});

describe('the text of a dimension', () => {
  it.each([
    ['25', 25, 1, ''],
    ['25,40', 25.4, 0.01, ''],
    ['⌀6.5', 6.5, 0.1, '⌀'],
    ['4x ⌀6.5 THRU', 6.5, 0.1, '⌀'],
    ['R2.5 TYP', 2.5, 0.1, 'R'],
    ['(12.7)', 12.7, 0.1, ''],
    ['25.4±0.05', 25.4, 0.1, ''],
    ['12 H7', 12, 1, ''],
  ] as const)('%s', (text, number, lastPlace, sign) => {
    expect(readDimensionText(text)).toMatchObject({ number, lastPlace: expect.closeTo(lastPlace, 12), sign });
  });

  it.each(['', '<>', '<>±0.1', '1/2', "3'-6", '45°', 'SEE NOTE', '2.5.1'])('%j is no number', (text) => {
    expect(readDimensionText(text).number).toBeNull();
  });
});
