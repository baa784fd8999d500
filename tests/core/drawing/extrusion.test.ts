import { describe, expect, it } from 'vitest';
import { contourArea } from '../../../core/geometry/contour-measures';
import { arc, block, circle, drawn, dxf, line, outline, polyline, square, xy, type Groups } from './drawn';

const mirrored: Groups = [210, 0, 220, 0, 230, -1];
const reasons = (entities: Groups) => drawn([...square(0, 0, 100), ...entities]).unused;

describe('extrusion (0, 0, −1) mirrors x (DXF reference, arbitrary axis algorithm)', () => {
  it.each([
    ['CIRCLE', circle(50.5, 3, 1)],
    ['ARC', arc(50.5, 3, 1, 0, 360)],
    ['LWPOLYLINE', polyline(true, xy('49.5,3 51.5,3,0.3 50.5,6'))],
    ['INSERT', [0, 'INSERT', 8, '0', 2, 'A', 10, 50.5, 20, 3]],
  ] as const)('%s', (_, entity) => {
    const blocks = block('A', circle(0, 0, 1));
    const plain = outline(dxf({ blocks, entities: entity }));
    const turned = outline(dxf({ blocks, entities: [...entity, ...mirrored] }));
    expect(turned.box.minX).toBeCloseTo(-plain.box.maxX, 12);
    expect(turned.box.minY).toBeCloseTo(plain.box.minY, 12);
    const areas = [plain, turned].map(({ contours }) => contourArea(contours[0]?.contour ?? []));
    expect(areas[0]).toBeCloseTo(areas[1] ?? NaN, 12);
  });

  it('POLYLINE, whose vertices carry no extrusion of their own', () => {
    const vertices = xy('1,0 3,0 3,2').flatMap(([x = 0, y = 0]) => [0, 'VERTEX', 8, '0', 10, x, 20, y]);
    const entities: Groups = [0, 'POLYLINE', 8, '0', 70, 1, ...mirrored, ...vertices, 0, 'SEQEND'];
    expect(drawn(entities).box).toEqual({ minX: -3, minY: 0, maxX: -1, maxY: 2 });
  });

  it('an ARC between mirrored ends still meets the LINEs drawn in space', () => {
    // Quarter about (0, 0) from (−2, 0) to (0, 2): in its own plane from 0° to 90° about (0, 0), x turned over.
    const corner = [...arc(0, 0, 2, 0, 90), ...mirrored, ...line(-2, 0, 0, 0), ...line(0, 0, 0, 2)];
    expect(contourArea(drawn(corner).contours[0]?.contour ?? [])).toBeCloseTo(Math.PI, 12);
  });

  it('LINE is in space already and stays', () => {
    const ends = [...line(0, 0, 3, 0), ...mirrored, ...line(3, 0, 0, 4), ...line(0, 4, 0, 0)];
    expect(drawn(ends).box).toEqual({ minX: 0, minY: 0, maxX: 3, maxY: 4 });
  });
});

describe('a plane that is not parallel to the drawing', () => {
  it('is left out and counted', () => {
    expect(reasons([...circle(5, 5, 1), 210, 1, 220, 0, 230, 0])).toEqual([
      { layer: '0', kind: 'CIRCLE', reason: 'tilted out of the drawing plane', count: 1 },
    ]);
    expect(reasons([...line(0, 0, 5, 5), 31, 2])[0]?.reason).toBe('tilted out of the drawing plane');
  });

  it('a height of its own does no harm', () => {
    const entities = [...line(0, 0, 3, 0), 30, 5, 31, 5, ...line(3, 0, 0, 4), ...line(0, 4, 0, 0)];
    expect(drawn(entities).contours).toHaveLength(1);
  });
});
