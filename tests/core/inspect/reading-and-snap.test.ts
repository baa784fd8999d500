import { describe, expect, test } from 'vitest';
import { indexOf } from '../../../core/geometry/segment-index';
import { tableOfRegion } from '../../../core/geometry/segment-table';
import { valueOfReading } from '../../../core/inspect/reading';
import { snapPlace } from '../../../core/inspect/snap-place';
import { circle, roundedRectangle } from '../../support/shapes';

// Expected values: elementary geometry, written beside each case.

test('distance, gap, radius and angle', () => {
  expect(valueOfReading({ kind: 'distance', from: { x: 1, y: 1 }, to: { x: 4, y: 5 } }).value).toBe(5);
  expect(valueOfReading({ kind: 'gap', from: { x: 0, y: 0 }, to: { x: 0, y: 0.05 } })).toEqual({
    value: 0.05,
    kind: 'length',
  });
  expect(valueOfReading({ kind: 'radius', centre: { x: 0, y: 0 }, at: { x: 0, y: -2 } }).value).toBe(2);
  const angle = (x: number, y: number) =>
    valueOfReading({ kind: 'angle', at: { x: 1, y: 1 }, first: { x: 2, y: 1 }, second: { x, y } });
  expect(angle(1, 3)).toEqual({ value: Math.PI / 2, kind: 'angle' });
  expect(angle(1, -3).value).toBeCloseTo(Math.PI / 2, 15);
  expect(angle(-1, 1).value).toBeCloseTo(Math.PI, 15);
});

describe('what a picked point holds on to', () => {
  // 20 × 10 with corners of 2: ends at (2, 0), (18, 0) …, centres at (2, 2), (18, 2) …
  const plate = indexOf(tableOfRegion([roundedRectangle(20, 10, 2)]));
  const snap = (x: number, y: number, reach = 0.5, from: { x: number; y: number } | null = null) =>
    snapPlace(plate, { x, y }, reach, from);

  test('ends, middles and centres before edges', () => {
    expect(snap(2.2, 0.1)).toMatchObject({ kind: 'end', at: { x: 2, y: 0 } });
    expect(snap(10.3, -0.2)).toMatchObject({ kind: 'middle', at: { x: 10, y: 0 } });
    expect(snap(18.1, 2.2)).toMatchObject({ kind: 'centre' });
    const arcMiddle = snap(0.6, 0.5);
    expect(arcMiddle?.kind).toBe('middle');
    expect(arcMiddle?.at.x).toBeCloseTo(2 - Math.SQRT2, 12);
  });

  test('edges, and nothing in the open', () => {
    expect(snap(5, 0.3)).toMatchObject({ kind: 'edge', at: { x: 5, y: 0 } });
    expect(snap(5, 3)).toBeNull();
    expect(snap(5, 0.3, 0.1)).toBeNull();
  });

  test('seen from a first point: square to an edge, tangent to an arc', () => {
    expect(snap(6.2, 0.2, 0.5, { x: 6, y: 4 })).toMatchObject({ kind: 'square', at: { x: 6, y: 0 } });
    // From (10, 0) to a circle of 3 about the origin: touched at r²/d = 0.9, ± r·√(1 − r²/d²).
    const disc = indexOf(tableOfRegion([circle(3)]));
    const touch = { x: 0.9, y: 3 * Math.sqrt(1 - 0.09) };
    const found = snapPlace(disc, { x: 1, y: 2.9 }, 0.5, { x: 10, y: 0 });
    expect(found?.kind).toBe('tangent');
    expect(found?.at.x).toBeCloseTo(touch.x, 12);
    expect(found?.at.y).toBeCloseTo(touch.y, 12);
  });
});
