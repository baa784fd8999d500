import { describe, expect, it } from 'vitest';
import { block, circle, codesOf, dxf, outline, square, type Groups } from './drawn';

// ezdxf documentation, "DXF Units", "Block Units": no implicit conversion; the factor is part of the INSERT's scale.

const table = (...records: Groups[]): Groups => [
  0,
  'TABLE',
  2,
  'BLOCK_RECORD',
  ...records.flat(),
  0,
  'ENDTAB',
];
const record = (name: string, unit: number): Groups => [0, 'BLOCK_RECORD', 2, name, 70, unit];
const oldRecord = (name: string, unit: number): Groups => [
  ...[
    0,
    'BLOCK_RECORD',
    2,
    name,
    1001,
    'ACAD',
    1000,
    'DesignCenter Data',
    1002,
    '{',
    1070,
    1,
    1070,
    unit,
    1002,
    '}',
  ],
];
const insert = (scale: number): Groups => [
  0,
  'INSERT',
  8,
  '0',
  2,
  'Hole',
  10,
  50,
  20,
  50,
  41,
  scale,
  42,
  scale,
];
const drawing = (tables: Groups, scale: number) =>
  outline(
    dxf({
      tables,
      blocks: block('HOLE', circle(0, 0, 1)),
      entities: [...square(0, 0, 100), ...insert(scale)],
    }),
  );

describe('a block with its own unit', () => {
  it.each([
    ['group 70', record('HOLE', 1)],
    ['DesignCenter data', oldRecord('HOLE', 1)],
  ])(
    'by %s: at the converting scale all is well; at another a person is asked, and nothing is scaled',
    (_, stated) => {
      const fine = drawing(table(stated), 25.4);
      expect(codesOf(fine)).toEqual([]);
      expect(fine.contours[1]?.contour[0]?.x).toBeCloseTo(50 - 25.4, 9);
      const odd = drawing(table(stated), 1);
      expect(codesOf(odd)).toEqual(['decide drawing-mended']);
      expect(odd.findings[0]?.message).toMatch(
        /"Hole" states inch .* in mm at scale 1, where 25\.4 would keep its size/,
      );
      expect(odd.contours[1]?.contour[0]?.x).toBeCloseTo(49, 12);
    },
  );

  it('the same unit, none, or an unknown one is nothing to ask about', () => {
    for (const unit of [4, 0, 99]) expect(codesOf(drawing(table(record('HOLE', unit)), 3))).toEqual([]);
    expect(codesOf(drawing([], 3))).toEqual([]);
  });
});
