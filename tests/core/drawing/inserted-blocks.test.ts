import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../core/drawing/drawing';
import { contourArea } from '../../../core/geometry/contour-measures';
import { tolerance } from '../../../core/geometry/tolerance';
import { block, circle, dxf, line, outline, polyline, square, xy, type Groups } from './drawn';

const areaOf = ({ contours }: Drawing): number => contourArea(contours[0]?.contour ?? []);
const insert = (name: string, more: Groups = [], layer = '0'): Groups => [
  ...[0, 'INSERT', 8, layer, 2, name, 10, 0, 20, 0],
  ...more,
];

describe('INSERT', () => {
  it('with a base point, turned, scaled and mirrored; layer 0 takes the layer of the INSERT', () => {
    const blocks = block('PART', [...line(1, 1, 4, 1), ...line(4, 1, 1, 5), ...line(1, 5, 1, 1)], [1, 1]);
    const entities: Groups = [0, 'INSERT', 8, 'CUT', 2, 'part', 10, 10, 20, 20, 41, -2, 42, 2, 50, 90];
    const drawing = outline(dxf({ blocks, entities }));
    expect(areaOf(drawing)).toBeCloseTo(24, 12);
    // x' = 10 − 2 y, y' = 20 − 2 x of the triangle (0,0) (3,0) (0,4).
    expect(drawing.box).toEqual({ minX: 2, minY: 14, maxX: 10, maxY: 20 });
    expect(drawing.contours[0]?.layer).toBe('CUT');
  });

  it('scaled unevenly: a circle becomes an ellipse, a bulge a part of one', () => {
    const entities = insert('A', [41, 3, 42, 1]);
    const round = outline(dxf({ blocks: block('A', circle(0, 0, 4)), entities }));
    expect(Math.abs(areaOf(round) - Math.PI * 48)).toBeLessThan(60 * tolerance.curveFit);
    for (const bulge of [Math.tan(Math.PI / 8), -Math.tan(Math.PI / 8)]) {
      // A quarter disc of radius 4, or what a quarter disc leaves of a square of side 4.
      const corner = polyline(true, xy(`0,0 4,0,${bulge} 0,4`));
      const drawing = outline(dxf({ blocks: block('A', corner), entities }));
      const flat = bulge > 0 ? 4 * Math.PI : 16 - 4 * Math.PI;
      expect(Math.abs(areaOf(drawing) - 3 * flat)).toBeLessThan(40 * tolerance.curveFit);
    }
  });

  it('nested in a mirrored INSERT, as an array of 2 × 3', () => {
    const blocks = [
      ...block('HOLE', circle(1, 0, 1)),
      ...block('ROW', [0, 'INSERT', 8, '0', 2, 'HOLE', 10, 5, 20, 0, 50, 90]),
    ];
    const entities = insert('ROW', [41, -1, 42, 1, 70, 2, 71, 3, 44, 10, 45, 20]);
    const { contours, box } = outline(dxf({ blocks, entities }));
    expect(contours).toHaveLength(6);
    // The inner turn puts the circle's centre at (5, 1), the mirror at (−5, 1); columns and rows are not mirrored.
    const close = (value: number): number => expect.closeTo(value, 12) as number;
    expect(box).toEqual({ minX: close(-6), minY: close(0), maxX: close(6), maxY: close(42) });
  });

  it('with attributes: they are words, counted, and the block is read', () => {
    const attribute: Groups = [0, 'ATTRIB', 8, 'T', 10, 1, 20, 1, 40, 2, 1, 'M4', 2, 'SIZE'];
    const entities = [...insert('A', [66, 1]), ...attribute, 0, 'SEQEND', 8, '0', ...circle(20, 0, 3)];
    const blocks = block('A', [...square(0, 0, 4), 0, 'ATTDEF', 8, 'T', 10, 1, 20, 1, 2, 'SIZE']);
    const drawing = outline(dxf({ blocks, entities }));
    expect(drawing.contours).toHaveLength(2);
    expect(drawing.unused.map(({ kind, reason }) => `${kind} ${reason}`)).toEqual([
      'ATTDEF text',
      'ATTRIB text',
    ]);
  });

  it('a third scale of 0, as some programs write for flat blocks, changes nothing', () => {
    const drawing = outline(dxf({ blocks: block('A', square(0, 0, 4)), entities: insert('A', [43, 0]) }));
    expect(areaOf(drawing)).toBe(16);
  });

  it('missing, containing itself, external, scaled to nothing: counted with its reason', () => {
    const blocks = [
      ...block('LOOP', [...circle(5, 5, 1), ...insert('LOOP')]),
      ...block('A', insert('B')),
      ...block('B', insert('A')),
      ...[0, 'BLOCK', 2, 'X', 70, 4, 10, 0, 20, 0, 0, 'ENDBLK'],
    ];
    const inserts = ['LOOP', 'A', 'X', 'GONE'].flatMap((name) => insert(name));
    const entities = [...square(0, 0, 10), ...inserts, ...insert('LOOP', [41, 0])];
    const drawing = outline(dxf({ blocks, entities }));
    expect(drawing.contours).toHaveLength(2);
    expect(drawing.unused.map(({ reason }) => reason)).toEqual([
      'block "A" contains itself',
      'block "GONE" is not in the file',
      'block "LOOP" contains itself',
      'external reference: its drawing is another file',
      'scaled to nothing',
    ]);
  });
});
