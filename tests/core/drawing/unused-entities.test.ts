import { describe, expect, it } from 'vitest';
import { block, circle, drawn, dxf, line, outline, square, type Groups } from './drawn';

const rows = (entities: Groups): string[] =>
  drawn([...square(0, 0, 100), ...entities]).unused.map(
    ({ layer, kind, reason, count }) => `${layer} ${kind}: ${reason} × ${count}`,
  );

const withoutOutline = [
  ...['HATCH', 'TRACE', 'SOLID', 'REGION', '3DSOLID', 'LEADER', 'XLINE', 'RAY', 'TEXT', 'MTEXT'],
  ...['DIMENSION', 'POINT', 'ATTRIB', 'VIEWPORT', 'MESH', 'SOMETHING_NEW'],
];

describe('what is not used is counted by layer, kind and reason, never dropped', () => {
  it.each(withoutOutline)('%s', (kind) => {
    const [row, ...more] = rows([0, kind, 8, 'X', 0, kind, 8, 'X', 10, 'nonsense']);
    expect(more).toEqual([]);
    expect(row).toMatch(new RegExp(`^X ${kind}: .+ × 2$`));
  });

  it('paper space, invisible, layers that are off or frozen (but not flag 2: new viewports only)', () => {
    const layer = (name: string, flags: number, color: number): Groups => [
      ...[0, 'LAYER', 2, name, 70, flags, 62, color, 6, 'CONTINUOUS'],
    ];
    const layers = [...layer('OFF', 0, -7), ...layer('ICE', 1, 7), ...layer('VP', 2, 7)];
    const drawing = outline(
      dxf({
        tables: [0, 'TABLE', 2, 'LAYER', 70, 3, ...layers, 0, 'ENDTAB'],
        entities: [
          ...[...square(0, 0, 10, 'vp'), ...circle(1, 1, 1, 'off'), ...circle(2, 2, 1, 'Ice')],
          ...[...circle(3, 3, 1), 67, 1, ...circle(4, 4, 1), 60, 1],
        ],
      }),
    );
    expect(drawing.contours).toHaveLength(1);
    expect(drawing.unused.map(({ layer: name, reason }) => `${name}: ${reason}`)).toEqual([
      '0: invisible',
      '0: paper space',
      'Ice: layer is frozen',
      'off: layer is off',
    ]);
  });

  it('line types with gaps, by layer, entity and block, even where the table leaves them out', () => {
    const axes: Groups = [0, 'LAYER', 2, 'AXES', 70, 0, 62, 1, 6, 'CENTER2'];
    const drawing = outline(
      dxf({
        tables: [0, 'TABLE', 2, 'LAYER', 70, 1, ...axes, 0, 'ENDTAB'],
        blocks: block('B', [...circle(6, 6, 1), 6, 'BYBLOCK']),
        entities: [
          ...[...square(0, 0, 10), ...circle(5, 5, 4, 'AXES'), ...circle(2, 2, 1), 6, 'HIDDEN'],
          ...[0, 'INSERT', 8, '0', 6, 'Dashed', 2, 'B', 10, 0, 20, 0],
        ],
      }),
    );
    expect(drawing.contours).toHaveLength(1);
    expect(drawing.unused.map(({ reason }) => reason).sort()).toEqual([
      'line type CENTER2: not an edge',
      'line type Dashed: not an edge',
      'line type HIDDEN: not an edge',
    ]);
  });

  it('a line type of the table counts by its dashes, whatever its name', () => {
    const type = (name: string, dashes: number): Groups => [0, 'LTYPE', 2, name, 73, dashes];
    const tables = [0, 'TABLE', 2, 'LTYPE', ...type('PHANTOM', 0), ...type('MINE', 2), 0, 'ENDTAB'];
    const entities = [...square(0, 0, 10), 6, 'PHANTOM', ...circle(5, 5, 1), 6, 'MINE'];
    const drawing = outline(dxf({ tables, entities }));
    expect(drawing.contours).toHaveLength(1);
    expect(drawing.unused[0]?.reason).toBe('line type MINE: not an edge');
  });

  it('splines that cannot be read, curves without size, entities without their coordinates', () => {
    const onePoint: Groups = [0, 'SPLINE', 8, '0', 70, 8, 71, 3, 11, 5, 21, 5];
    const twelfth: Groups = [0, 'SPLINE', 8, '0', 71, 12, 10, 0, 20, 0, 10, 5, 20, 5];
    const torn: Groups = [0, 'SPLINE', 8, '0', 71, 3, 40, 0, 40, 0, 10, 0, 20, 0, 10, 1, 20, 1];
    // The knot 1 is twofold in a spline of degree 1: the curve would jump from (1, 1) to (5, 5).
    const jumping: Groups = [
      ...[0, 'SPLINE', 8, '0', 71, 1, 40, 0, 40, 0, 40, 1, 40, 1, 40, 2, 40, 2],
      ...[10, 0, 20, 0, 10, 1, 20, 1, 10, 5, 20, 5, 10, 6, 20, 5],
    ];
    const noRadius: Groups = [0, 'CIRCLE', 8, '0', 10, 1, 20, 1];
    expect(
      rows([
        ...onePoint,
        ...twelfth,
        ...torn,
        ...jumping,
        ...circle(5, 5, 0),
        ...line(3, 3, 3, 3),
        ...noRadius,
      ]),
    ).toEqual([
      '0 CIRCLE: incomplete: a coordinate or radius is missing × 1',
      '0 CIRCLE: zero length × 1',
      '0 LINE: zero length × 1',
      '0 SPLINE: incomplete: a coordinate or radius is missing × 1',
      '0 SPLINE: spline of degree 12: 1 to 11 are read × 1',
      '0 SPLINE: spline whose knots, points and weights do not match × 2',
    ]);
  });

  it('all of it in one note', () => {
    const text: Groups = [0, 'TEXT', 8, 'NOTES'];
    const drawing = drawn([...square(0, 0, 10), ...text, ...text, ...line(1, 1, 1, 1)]);
    const notes = drawing.findings.filter(({ code }) => code === 'drawing-not-used');
    expect(notes.map(({ weight }) => weight)).toEqual(['note']);
    expect(notes[0]?.message).toBe(
      '3 entities are not part of the outline: 1 LINE on layer 0 (zero length); 2 TEXT on layer NOTES (text).',
    );
  });
});
