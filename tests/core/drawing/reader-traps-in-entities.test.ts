import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../core/drawing/drawing';
import { contourArea } from '../../../core/geometry/contour-measures';
import { tolerance } from '../../../core/geometry/tolerance';
import {
  arc,
  block,
  circle,
  codesOf,
  drawn,
  dxf,
  line,
  outline,
  polyline,
  raw,
  square,
  xy,
  type Groups,
} from './drawn';

// What general readers of DXF are known to get wrong or to lose in entities, trap by trap.
const area = ({ contours }: Drawing, i = 0): number => contourArea(contours[i]?.contour ?? []);
const turnedOver: Groups = [210, 0, 220, 0, 230, -1];
const insert = (name: string, more: Groups = []): Groups => [
  ...[0, 'INSERT', 8, '0', 2, name, 10, 0, 20, 0],
  ...more,
];
const cornersOf = (text: string): Groups =>
  xy(text).flatMap(([x = 0, y = 0]) => [0, 'VERTEX', 8, '0', 10, x, 20, y]);

describe('trap: the extrusion of CIRCLE and ELLIPSE is discarded', () => {
  it('eight holes drawn at x = 50.5 in a plane turned over lie at −50.5', () => {
    const holes = Array.from({ length: 8 }, (_, i) => [...circle(50.5, 10 * i, 2), ...turnedOver]).flat();
    const { contours } = drawn(holes);
    expect(contours).toHaveLength(8);
    for (const { contour } of contours)
      expect(contour.reduce((sum, { x }) => sum + x, 0) / contour.length).toBeCloseTo(-50.5, 12);
  });

  it('half an ellipse turned over is the other half', () => {
    const half: Groups = [...[0, 'ELLIPSE', 8, '0', 10, 0, 20, 0, 11, 5, 21, 0, 40, 0.5, 41, 0, 42, Math.PI]];
    const chord = line(-5, 0, 5, 0);
    expect(drawn([...half, ...chord]).box.maxY).toBeCloseTo(2.5, 3);
    expect(drawn([...half, ...turnedOver, ...chord]).box.minY).toBeCloseTo(-2.5, 3);
  });
});

describe('trap: the extrusion of ARC, LWPOLYLINE, POLYLINE and INSERT is kept but not applied', () => {
  it.each([
    ['ARC', arc(20, 3, 1, 0, 360)],
    ['LWPOLYLINE', polyline(true, xy('19,2 21,2,0.3 20,5'))],
    ['INSERT', insert('A', [10, 20])],
  ] as const)('%s', (_, entity) => {
    const blocks = block('A', circle(0, 0, 1));
    const { box } = outline(dxf({ blocks, entities: [...entity, ...turnedOver] }));
    expect((box.minX + box.maxX) / 2).toBeLessThan(-19);
  });

  it('POLYLINE', () => {
    const entities: Groups = [
      ...[0, 'POLYLINE', 8, '0', 70, 1, ...turnedOver],
      ...[...cornersOf('1,0 3,0 3,2'), 0, 'SEQEND'],
    ];
    expect(drawn(entities).box).toEqual({ minX: -3, minY: 0, maxX: -1, maxY: 2 });
  });
});

describe('trap: the weights of a SPLINE are dropped', () => {
  it('a rational quarter circle stays one', () => {
    const quarter: Groups = [
      ...[0, 'SPLINE', 8, '0', 70, 12, 71, 2, 72, 6, 73, 3],
      ...[40, 0, 40, 0, 40, 0, 40, 1, 40, 1, 40, 1, 41, 1, 41, Math.SQRT1_2, 41, 1],
      ...[10, 4, 20, 0, 10, 4, 20, 4, 10, 0, 20, 4],
    ];
    const drawing = drawn([...quarter, ...line(0, 4, 0, 0), ...line(0, 0, 4, 0)]);
    expect(Math.abs(area(drawing) - 4 * Math.PI)).toBeLessThan(7 * tolerance.curveFit);
  });
});

describe('trap: a SPLINE by fit points only', () => {
  it('runs through them', () => {
    const fit = xy('0,0 5,2 10,0').flatMap(([x = 0, y = 0]) => [11, x, 21, y]);
    const drawing = drawn([0, 'SPLINE', 8, '0', 70, 8, 71, 3, 74, 3, ...fit, ...line(10, 0, 0, 0)]);
    expect(drawing.box.maxY).toBeCloseTo(2, 3);
    expect(codesOf(drawing)).toContain('note drawing-mended');
  });
});

describe('trap: LWPOLYLINE with code 91 in its vertices, or a wrong count', () => {
  it('keeps its vertices when group 91 stands among them', () => {
    const vertices = xy('0,0 4,0 4,4 0,4').flatMap(([x = 0, y = 0], i) => [10, x, 20, y, 91, i]);
    expect(area(drawn([0, 'LWPOLYLINE', 8, '0', 90, 4, 70, 1, ...vertices]))).toBe(16);
  });

  it.each([3, 7])('with a count of %i for 4 vertices is read whole and pointed out', (count) => {
    const drawing = drawn(square(0, 0, 4).map((value, i, all) => (all[i - 1] === 90 ? count : value)));
    expect(area(drawing)).toBe(16);
    expect(codesOf(drawing)).toEqual(['decide drawing-mended']);
  });

  it('without a count is read', () => {
    const without = square(0, 0, 4).filter((value, i, all) => value !== 90 && all[i - 1] !== 90);
    expect(area(drawn(without))).toBe(16);
  });
});

describe('trap: the elevation of a POLYLINE, and the control points of a smoothed one', () => {
  it('a height does no harm, in a plane turned over either', () => {
    const high: Groups = [
      ...[0, 'POLYLINE', 8, '0', 70, 1, 10, 0, 20, 0, 30, 7, ...turnedOver],
      ...[...cornersOf('0,0 4,0 4,4'), 0, 'SEQEND'],
    ];
    expect(area(drawn(high))).toBeCloseTo(8, 12);
  });

  it('the frame of a smoothed one is not on the curve', () => {
    const frame: Groups = [0, 'VERTEX', 8, '0', 10, 99, 20, 99, 70, 16];
    const smoothed: Groups = [
      ...[0, 'POLYLINE', 8, '0', 70, 5, 75, 6, ...frame],
      ...[...cornersOf('0,0 4,0 4,4 0,4'), 0, 'SEQEND'],
    ];
    expect(drawn(smoothed).box).toEqual({ minX: 0, minY: 0, maxX: 4, maxY: 4 });
  });
});

describe('trap: a LINE with its groups in an unusual order', () => {
  it('is read', () => {
    const odd: Groups = [0, 'LINE', 21, 4, 11, 0, 20, 0, 8, '0', 10, 3];
    expect(area(drawn([...odd, ...line(0, 4, 0, 0), ...line(0, 0, 3, 0)]))).toBe(6);
  });
});

describe('trap: kinds that are dropped in silence', () => {
  it.each(['HATCH', 'MLINE', 'TRACE', 'REGION', '3DSOLID', 'LEADER', 'XLINE', 'RAY', 'BODY', 'MYSTERY'])(
    '%s is counted',
    (kind) => {
      const { unused } = drawn([...square(0, 0, 10), 0, kind, 8, 'L']);
      expect(unused.map((row) => `${row.count} ${row.kind} on ${row.layer}`)).toEqual([`1 ${kind} on L`]);
    },
  );

  it.each(['REGION', '3DSOLID', 'BODY'])('%s: says what to ask the customer for', (kind) => {
    const { findings } = drawn([...square(0, 0, 10), 0, kind, 8, 'L']);
    const [asked] = findings.filter(({ code }) => code === 'drawing-unsupported');
    expect(asked).toMatchObject({ weight: 'decide' });
    expect(asked?.cures[0]?.say).toMatch(/Ask the customer to explode/);
  });
});

describe('trap: an ARC across 0° has a negative angle', () => {
  it('from 315° to 45° it is a quarter', () => {
    const [x, y] = [4 * Math.SQRT1_2, 4 * Math.SQRT1_2];
    const sector = drawn([...arc(0, 0, 4, 315, 45), ...line(0, 0, x, -y), ...line(0, 0, x, y)]);
    expect(area(sector)).toBeCloseTo(4 * Math.PI, 12);
  });
});

describe('trap: INSERT turns in degrees, arcs in radians; blocks are not put in their places', () => {
  it('a block turned by 90°', () => {
    const blocks = block('A', polyline(true, xy('0,0 8,0 8,2 0,2')));
    const drawing = outline(dxf({ blocks, entities: insert('A', [50, 90]) }));
    const { minX, maxX, maxY } = drawing.box;
    expect([minX, maxX, maxY].map((value) => Math.round(value * 1e9) / 1e9)).toEqual([-2, 0, 8]);
  });
});

describe('trap: block names are looked up with their case', () => {
  it('an INSERT finds its block whatever its case', () => {
    const blocks = block('Part', square(0, 0, 3));
    expect(area(outline(dxf({ blocks, entities: insert('PART') })))).toBe(9);
  });
});

describe('trap: paper space and invisible entities stay in the same list', () => {
  it('are left out and counted', () => {
    const aside = [...circle(3, 3, 1), 67, 1, ...circle(6, 6, 1), 60, 1];
    const drawing = drawn([...square(0, 0, 10), ...aside]);
    expect(drawing.contours).toHaveLength(1);
    expect(drawing.unused.map(({ reason, count }) => `${count} ${reason}`)).toEqual([
      '1 invisible',
      '1 paper space',
    ]);
  });
});

describe('trap: layer flag 2 is taken for frozen though it concerns new viewports only', () => {
  it('such a layer is read, one with flag 1 or a negative colour is not', () => {
    const row = (name: string, flags: number, colour: number): Groups => [
      ...[0, 'LAYER', 2, name, 70, flags, 62, colour, 6, 'CONTINUOUS'],
    ];
    const table = [...row('VP', 2, 7), ...row('ICE', 1, 7), ...row('OFF', 0, -7)];
    const drawing = outline(
      dxf({
        tables: [0, 'TABLE', 2, 'LAYER', 70, 3, ...table, 0, 'ENDTAB'],
        entities: [...square(0, 0, 10, 'VP'), ...circle(3, 3, 1, 'ICE'), ...circle(6, 6, 1, 'OFF')],
      }),
    );
    expect(drawing.contours.map(({ layer }) => layer)).toEqual(['VP']);
    expect(drawing.unused.map(({ reason }) => reason)).toEqual(['layer is frozen', 'layer is off']);
  });
});

describe('trap: an entity named constructor throws, a block named __proto__ is lost', () => {
  it('they are names like any other', () => {
    const blocks = block('__proto__', circle(5, 5, 1));
    const entities = [...square(0, 0, 10), ...insert('__proto__'), 0, 'constructor', 8, 'X'];
    const drawing = outline(dxf({ blocks, entities }));
    expect(drawing.contours).toHaveLength(2);
    expect(drawing.unused.map(({ kind }) => kind)).toEqual(['constructor']);
  });
});

describe('trap of the oracle: arcs and ellipses replaced by cubics', () => {
  it('here a circle is two half turns, exactly, and an ellipse stays one until its unit is known', () => {
    const [part] = raw(dxf({ entities: circle(0, 0, 3) })).pieces[0]?.parts ?? [];
    expect(part).toMatchObject({ type: 'chain', chain: [{ bulge: 1 }, { bulge: 1 }, { bulge: 0 }] });
    const half: Groups = [0, 'ELLIPSE', 8, '0', 10, 0, 20, 0, 11, 5, 21, 0, 40, 0.5, 41, 0, 42, Math.PI];
    expect(raw(dxf({ entities: half })).pieces[0]?.parts[0]?.type).toBe('ellipse');
  });
});

describe('trap of the oracle: unclamped periodic splines', () => {
  it('a closed uniform cubic runs on its own domain only: over a hexagon, inside it', () => {
    const corners = Array.from({ length: 9 }, (_, i) => [
      10 * Math.cos((i * Math.PI) / 3),
      10 * Math.sin((i * Math.PI) / 3),
    ]);
    const knots = Array.from({ length: 13 }, (_, i) => [40, i]).flat();
    const drawing = drawn([
      ...[0, 'SPLINE', 8, '0', 70, 11, 71, 3, 72, 13, 73, 9, ...knots],
      ...corners.flatMap(([x = 0, y = 0]) => [10, x, 20, y]),
    ]);
    // At a knot a uniform cubic lies at (p0 + 4 p1 + p2) / 6, here (4 + 2 cos 60°) / 6 of the radius.
    expect(drawing.box.maxX).toBeCloseTo((10 * 5) / 6, 3);
    expect(drawing.contours).toHaveLength(1);
  });
});
