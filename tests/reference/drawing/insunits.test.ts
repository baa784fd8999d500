import { describe, expect, it } from 'vitest';
import { outlineOf } from '../../../core/drawing/read-drawing';
import { unitCandidates } from '../../../core/drawing/unit-candidates';
import { drawingUnits, type DrawingUnit } from '../../../core/units';
import { dxf, raw, square, valueOf } from '../../core/drawing/drawn';

/** `$INSUNITS` and mm per unit. Source: DXF reference, HEADER section, $INSUNITS; sizes by the SI and the 1959 inch. */
const published: readonly (readonly [number, DrawingUnit, number])[] = [
  [1, 'inch', 25.4],
  [2, 'foot', 304.8],
  [3, 'mile', 1_609_344],
  [4, 'mm', 1],
  [5, 'cm', 10],
  [6, 'm', 1000],
  [7, 'km', 1e6],
  [8, 'microinch', 25.4e-6],
  [9, 'mil', 0.0254],
  [10, 'yard', 914.4],
  [11, 'angstrom', 1e-7],
  [12, 'nm', 1e-6],
  [13, 'micron', 1e-3],
  [14, 'dm', 100],
  [15, 'dam', 10_000],
  [16, 'hm', 100_000],
];

const stating = (...header: (string | number)[]) => raw(dxf({ header, entities: square(2, 3, 4) }));

describe('$INSUNITS', () => {
  it('knows every published unit that a part may be drawn in', () => {
    expect(published.map(([, unit]) => unit).sort()).toEqual(Object.keys(drawingUnits).sort());
  });

  it.each(published)('%i is %s, %d mm', (code, unit, mm) => {
    const drawing = stating(9, '$INSUNITS', 70, code);
    expect(drawing.statedUnit).toBe(unit);
    expect(unitCandidates(drawing)[0]).toMatchObject({ unit, isStated: true, width: 4 * mm, height: 4 * mm });
    const size = 4 * mm;
    // A unit in which the square is a speck or a continent is read, but holds no part.
    if (size < 0.01 || size > 1e6) return;
    const { box } = valueOf(outlineOf(drawing, unit, 0.005));
    expect(box.maxX - box.minX).toBeCloseTo(size, 9);
    expect(box.minY).toBeCloseTo(3 * mm, 9);
  });

  it.each([0, 17, 18, 19, 20, 21, 22, 23, 24, 99, -1, ''])('%s states no unit to draw a part in', (code) => {
    expect(stating(9, '$INSUNITS', 70, code).statedUnit).toBeNull();
  });

  it('absent, as in R12, states none; $MEASUREMENT does not stand in for it', () => {
    expect(stating(9, '$ACADVER', 1, 'AC1009', 9, '$MEASUREMENT', 70, 1).statedUnit).toBeNull();
    expect(unitCandidates(stating())[0]).toMatchObject({ unit: 'mm', isStated: false, width: 4, height: 4 });
  });
});
