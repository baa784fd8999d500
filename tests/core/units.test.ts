import { describe, expect, it } from 'vitest';
import { drawingUnits, formatLength, formatLengthNumber, parseLength } from '../../core/units';

const read = (text: string, unit: 'mm' | 'inch' = 'mm', thickness?: number) => {
  const result = parseLength(text, thickness === undefined ? { unit } : { unit, thickness });
  return result.ok ? result.value : result.problem.code;
};

describe('drawingUnits', () => {
  // DXF reference, HEADER section, $INSUNITS: the codes; the sizes are the international yard (0.9144 m, 1959) and SI.
  it.each([
    ['inch', 1, 25.4],
    ['foot', 2, 304.8],
    ['mile', 3, 1_609_344],
    ['mm', 4, 1],
    ['cm', 5, 10],
    ['m', 6, 1000],
    ['km', 7, 1_000_000],
    ['microinch', 8, 0.0000254],
    ['mil', 9, 0.0254],
    ['yard', 10, 914.4],
    ['angstrom', 11, 0.0000001],
    ['nm', 12, 0.000001],
    ['micron', 13, 0.001],
    ['dm', 14, 100],
    ['dam', 15, 10_000],
    ['hm', 16, 100_000],
  ] as const)('%s is code %d and %d mm', (unit, code, mm) => {
    expect(drawingUnits[unit]).toEqual({ code, mm });
  });
});

describe('parseLength', () => {
  // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
  it.each([
    ['0.25', 0.25],
    ['0,25', 0.25],
    ['.5', 0.5],
    ['5.', 5],
    [' 0.25 mm ', 0.25],
    ['0.25mm', 0.25],
    ['0.010in', 0.254],
    ['0.010 in.', 0.254],
    ['0,010 IN', 0.254],
    ['1/64 in', 0.396875],
    ['1 1/64 in', 25.796875],
    ['-1/64 in', -0.396875],
    ['0.01"', 0.254],
    ['0.01″', 0.254],
    ['10 mil', 0.254],
    ['10 thou', 0.254],
    ['20 µm', 0.02],
    ['20 um', 0.02],
    ['1.5 cm', 15],
    ['-0.1', -0.1],
  ])('reads %j as %d mm', (text, mm) => {
    expect(read(text)).toBeCloseTo(mm, 12);
  });

  it('takes a bare number in the unit asked for', () => {
    expect(read('0.01', 'inch')).toBeCloseTo(0.254, 12);
    expect(read('1/4', 'inch')).toBeCloseTo(6.35, 12);
    expect(read('0.25 mm', 'inch')).toBe(0.25);
  });

  it('takes a percentage of the stock thickness', () => {
    expect(read('10 % t', 'mm', 1.5)).toBeCloseTo(0.15, 12);
    expect(read('10%', 'mm', 1.5)).toBeCloseTo(0.15, 12);
    expect(read('7,5 %t', 'inch', 2)).toBeCloseTo(0.15, 12);
    expect(read('10 % t')).toBe('length-no-thickness');
  });

  it.each(['', 'wide', '0.2.5', '1,250.5', '1/0', '--1', '0.2 0.3', 'NaN', '1e3', '/2', '1//2'])(
    'refuses %j',
    (text) => {
      expect(read(text)).toBe('length-not-read');
    },
  );

  it.each(['3 parsec', '3 t', '5 kg'])('refuses the unit of %j', (text) => {
    expect(read(text)).toBe('length-unit-unknown');
  });
});

describe('formatLength', () => {
  it('writes the unit and no needless zeros', () => {
    expect(formatLength(0.25, 'mm')).toBe('0.25 mm');
    expect(formatLength(0.254, 'inch')).toBe('0.01 in');
    expect(formatLength(25, 'mm')).toBe('25 mm');
    expect(formatLength(0.062132, 'mm')).toBe('0.0621 mm');
    expect(formatLength(0.062132, 'inch')).toBe('0.00245 in');
  });

  it('never writes a negative zero', () => {
    expect(formatLengthNumber(-0.00001, 'mm')).toBe('0');
    expect(formatLengthNumber(-0.5, 'mm')).toBe('-0.5');
  });

  it('reads back what it writes', () => {
    for (const mm of [0.25, 1.5, 0.0254, 12.7, 100]) {
      for (const unit of ['mm', 'inch'] as const) {
        expect(read(formatLength(mm, unit))).toBeCloseTo(mm, 3);
      }
    }
  });
});
