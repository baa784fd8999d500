import { describe, expect, it } from 'vitest';
import { contourArea } from '../../../core/geometry/contour-measures';
import { arc, circle, drawn, line, polyline, xy, type Groups } from './drawn';

// Every area below is worked out from the entity's definition in the DXF reference by plane geometry.

const areas = (entities: Groups): number[] =>
  drawn(entities).contours.map(({ contour }) => contourArea(contour));
const vertices = (text: string, flags = 0): Groups =>
  xy(text).flatMap(([x = 0, y = 0, bulge = 0]) => [0, 'VERTEX', 8, '0', 10, x, 20, y, 42, bulge, 70, flags]);
const closed = (flags: number, ...inside: Groups[]): Groups => [
  ...[0, 'POLYLINE', 8, '0', 66, 1, 70, flags],
  ...inside.flat(),
  ...[0, 'SEQEND'],
];

describe('lines and arcs', () => {
  it('LINE: a triangle of sides 3, 4, 5 holds 6', () => {
    expect(areas([...line(0, 0, 3, 0), ...line(3, 0, 0, 4), ...line(0, 4, 0, 0)])).toEqual([
      expect.closeTo(6, 12),
    ]);
  });

  it('LINE with its groups in any order', () => {
    const odd: Groups = [0, 'LINE', 21, 4, 11, 0, 20, 0, 8, '0', 10, 3];
    expect(areas([...line(0, 0, 3, 0), ...odd, ...line(0, 4, 0, 0)])).toEqual([expect.closeTo(6, 12)]);
  });

  it('ARC and LINE: a half disc of radius 2 holds 2π; three quarters of a disc hold 3π', () => {
    expect(areas([...arc(0, 0, 2, 0, 180), ...line(-2, 0, 2, 0)])[0]).toBeCloseTo(2 * Math.PI, 12);
    const most = [...arc(0, 0, 2, 0, 270), ...line(0, 0, 2, 0), ...line(0, 0, 0, -2)];
    expect(areas(most)[0]).toBeCloseTo(3 * Math.PI, 12);
  });

  it('ARC that passes 0°, and ARC whose ends are equal (a full circle)', () => {
    expect(areas([...arc(0, 0, 2, 270, 90), ...line(0, 2, 0, -2)])[0]).toBeCloseTo(2 * Math.PI, 12);
    expect(areas(arc(1, 1, 2, 30, 30))[0]).toBeCloseTo(4 * Math.PI, 12);
  });

  it('CIRCLE: two half turns whose bulge is exactly 1', () => {
    const [found] = drawn(circle(5, 5, 3)).contours;
    expect(contourArea(found?.contour ?? [])).toBeCloseTo(9 * Math.PI, 12);
    expect(found?.contour.map(({ bulge }) => bulge)).toEqual([1, 1]);
  });
});

describe('polylines', () => {
  const slot = '2,0 8,0,1 8,4 2,4,1';

  it('LWPOLYLINE with bulges: a slot 10 × 4 with round ends holds 24 + 4π', () => {
    expect(areas(polyline(true, xy(slot)))[0]).toBeCloseTo(24 + 4 * Math.PI, 12);
  });

  it('bulge = tan(angle / 4) (DXF reference, group 42): 90° 0.414214, 60° 0.267949, 180° 1', () => {
    // Sector of that angle and radius 5: the arc and two edges to the centre hold angle · 25 / 2.
    for (const [angle, bulge] of [
      [90, 0.414214],
      [60, 0.267949],
      [180, 1],
    ] as const) {
      const turn = (angle * Math.PI) / 180;
      expect(Math.tan(turn / 4)).toBeCloseTo(bulge, 6);
      const [x, y] = [5 * Math.cos(turn), 5 * Math.sin(turn)];
      const sector = [
        [5, 0, Math.tan(turn / 4)],
        [x, y],
        [0, 0],
      ];
      expect(areas(polyline(true, sector))[0]).toBeCloseTo((turn * 25) / 2, 10);
      const drawnAsArc = [...arc(0, 0, 5, 0, angle), ...line(x, y, 0, 0), ...line(0, 0, 5, 0)];
      const found = drawn(drawnAsArc).contours[0]?.contour.map((vertex) => vertex.bulge) ?? [];
      expect(Math.max(...found)).toBeCloseTo(Math.tan(turn / 4), 12);
    }
  });

  it('LWPOLYLINE with a bulge beyond 1: 270° of a disc; no stored bulge exceeds 1', () => {
    const bulge = Math.tan((1.5 * Math.PI) / 4);
    const [found] = drawn(
      polyline(true, [
        [2, 0, bulge],
        [0, -2],
        [0, 0],
      ]),
    ).contours;
    expect(contourArea(found?.contour ?? [])).toBeCloseTo(3 * Math.PI, 12);
    expect(Math.max(...(found?.contour ?? []).map((vertex) => Math.abs(vertex.bulge)))).toBeLessThanOrEqual(
      1,
    );
  });

  it('POLYLINE with bulges, and one drawn clockwise: stored counter-clockwise', () => {
    expect(areas(closed(1, vertices(slot)))[0]).toBeCloseTo(24 + 4 * Math.PI, 12);
    expect(areas(closed(1, vertices('2,4 8,4,-1 8,0 2,0,-1')))[0]).toBeCloseTo(24 + 4 * Math.PI, 12);
  });

  it('POLYLINE smoothed as a spline: the frame (vertex flag 16) is not on the curve', () => {
    const smoothed = closed(5, vertices('-9,-9 9,-9 9,9', 16), vertices('0,0 4,0 4,4 0,4', 8));
    expect(areas(smoothed)).toEqual([expect.closeTo(16, 12)]);
  });

  it('POLYLINE in space (flag 8) is flat where all its heights agree; a mesh (flag 64) is not an outline', () => {
    const mesh = closed(64, vertices('0,0 4,0 0,3', 32)).map((value, i) => (i === 3 ? 'M' : value));
    const drawing = drawn([...closed(9, vertices('0,0 4,0 0,3', 32)), ...mesh]);
    expect(drawing.contours.map(({ contour }) => contourArea(contour))).toEqual([expect.closeTo(6, 12)]);
    expect(drawing.unused).toEqual([
      { layer: 'M', kind: 'POLYLINE', reason: 'mesh: not an outline', count: 1 },
    ]);
  });
});
