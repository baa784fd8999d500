import { describe, expect, it } from 'vitest';
import { circle, codesOf, drawn, outline, dxf, polyline, square, xy } from './drawn';

describe('contours nest by containment', () => {
  const entities = [
    ...circle(50, 5, 1), // hole in the small square
    ...square(45, 0, 10),
    ...circle(30, 30, 4), // hole right
    ...circle(30, 30, 2), // island in it
    ...circle(10, 30, 3), // hole left
    ...square(0, 0, 40),
  ];

  it('largest outer first, its holes by place with what lies in them, then the next', () => {
    const found = drawn(entities).contours.map(({ id, depth, parentId, contour }) => {
      return `${id} ${depth} ${parentId ?? '-'} ${Math.round(contour[0]?.x ?? NaN)}`;
    });
    expect(found).toEqual(['c1 0 - 0', 'c2 1 c1 7', 'c3 1 c1 26', 'c4 2 c3 28', 'c5 0 - 45', 'c6 1 c5 49']);
  });

  it('the same in any order of the entities', () => {
    const reversed = [
      ...[...square(0, 0, 40), ...circle(10, 30, 3), ...circle(30, 30, 2), ...circle(30, 30, 4)],
      ...[...square(45, 0, 10), ...circle(50, 5, 1)],
    ];
    expect(drawn(reversed).contours).toEqual(drawn(entities).contours);
  });
});

describe('contours that cross are stopped, with the place', () => {
  it('each other', () => {
    const drawing = drawn([...square(0, 0, 10), ...square(5, 5, 10)]);
    expect(codesOf(drawing)).toEqual(['stop contours-cross']);
    expect(drawing.findings[0]).toMatchObject({ place: { x: 5, y: 10 }, contourId: 'c1' });
    expect(drawing.findings[0]?.numbers).toEqual([{ label: 'Places', value: 2, kind: 'count' }]);
  });

  it('itself', () => {
    const drawing = drawn(polyline(true, xy('0,0 10,10 10,0 0,8')));
    expect(codesOf(drawing)).toEqual(['stop contours-cross']);
    // Where y = x meets the last edge y = 8 − 0.8 x: x = 40/9.
    expect(drawing.findings[0]?.place?.x).toBeCloseTo(40 / 9, 9);
  });

  it('itself, as a figure of eight that holds as much one way as the other', () => {
    const drawing = drawn(polyline(true, xy('0,0 10,10 10,0 0,10')));
    expect(codesOf(drawing)).toEqual(['stop contours-cross']);
    expect(drawing.findings[0]?.place).toMatchObject({ x: 5, y: 5 });
  });

  it('an arc through an edge; a hole that only touches its outer contour wants a decision', () => {
    expect(codesOf(drawn([...square(0, 0, 10), ...circle(0, 5, 2)]))).toEqual(['stop contours-cross']);
    expect(codesOf(drawn([...square(0, 0, 10), ...circle(2, 5, 2)]))).toEqual(['decide contours-touch']);
  });

  it('but neighbours that run tangent into each other do not', () => {
    const slot = polyline(true, xy('2,0 8,0,1 8,4 2,4,1'));
    expect(codesOf(drawn(slot))).toEqual([]);
    const ellipse = [0, 'ELLIPSE', 8, '0', 10, 0, 20, 0, 11, 30, 21, 7, 40, 0.1, 41, 0, 42, 2 * Math.PI];
    expect(codesOf(outline(dxf({ entities: ellipse })))).toEqual(['note curve-fitted']);
  });
});
