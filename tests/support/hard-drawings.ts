import { dxfText, type Pair } from '../../build/dxf-text';
import { arc, circle, line, polyline, xy, type Groups } from '../core/drawing/drawn';

const insertAt = (x: number, y: number, name: string, more: Groups): Groups => [
  ...[0, 'INSERT', 8, 'PART', 2, name, 10, x, 20, y],
  ...more,
];
const insert = (name: string, more: Groups): Groups => insertAt(7, -3, name, more);
const spline = (degree: number, points: readonly (readonly number[])[], knots: readonly number[]): Groups => [
  ...[0, 'SPLINE', 8, 'S', 70, 8, 71, degree, 72, knots.length, 73, points.length, 74, 0],
  ...knots.flatMap((knot) => [40, knot]),
  ...points.flatMap(([x = 0, y = 0]) => [10, x, 20, y, 30, 0]),
];
const wave = (count: number): number[][] =>
  Array.from({ length: count }, (_, i) => [i * 3, i % 2 === 0 ? 0 : 5]);
const clamped = (degree: number, count: number): number[] => [
  ...new Array<number>(degree + 1).fill(0),
  ...Array.from({ length: count - degree - 1 }, (_, i) => i + 1),
  ...new Array<number>(degree + 1).fill(count - degree),
];
const slot = [...line(0, 0, 8, 0), ...arc(8, 2, 2, 270, 90), ...line(8, 4, 0, 4), ...arc(0, 2, 2, 90, 270)];
const bulged = polyline(true, xy('0,0 9,0,0.4 9,6 3,6,-0.7 0,4'));
const raised = polyline(true, xy('0,20 9,20,0.4 9,26 3,26,-0.7 0,24'));
const below: Groups = [210, 0, 220, 0, 230, -1];
const vertices = (text: string, flags: number): Groups =>
  xy(text).flatMap(([x = 0, y = 0, bulge = 0]) => [0, 'VERTEX', 8, 'P', 10, x, 20, y, 42, bulge, 70, flags]);

export interface HardCase {
  readonly blocks?: Readonly<Record<string, Groups>>;
  readonly entities: Groups;
  /** Whether all of it is rings without a touching neighbour, so that their areas can be compared. */
  readonly isClosed?: boolean;
}

/** Our own hard cases. */
export const hardDrawings: Readonly<Record<string, HardCase>> = {
  'array, turned, unevenly scaled': {
    isClosed: true,
    blocks: { A: [...slot, ...raised, ...circle(4, 12, 1.5)] },
    entities: insert('A', [41, 2, 42, 0.5, 50, 33, 70, 3, 71, 2, 44, 40, 45, 25]),
  },
  'mirrored in a mirrored block, turned': {
    isClosed: true,
    blocks: { A: slot, B: [...insert('A', [41, -1.5, 42, 0.75, 50, 70]), ...bulged] },
    entities: insert('B', [41, -2, 42, 2, 50, 210, ...below]),
  },
  'arcs and polylines seen from below': {
    entities: [...arc(5, 6, 3, 20, 290), ...below, ...bulged, ...below, ...circle(9, 9, 2), ...below],
  },
  'splines of degree 1 to 9': {
    entities: [1, 2, 3, 4, 5, 6, 7, 8, 9].flatMap((degree) => spline(degree, wave(14), clamped(degree, 14))),
  },
  'ellipses, turned and squeezed': {
    isClosed: true,
    blocks: { A: circle(0, 0, 4) },
    entities: [
      ...[0, 'ELLIPSE', 8, 'S', 10, 0, 20, 0, 30, 0, 11, 6, 21, 3, 31, 0, 40, 0.4, 41, 0, 42, 2 * Math.PI],
      ...insertAt(40, 0, 'A', [41, 3, 42, 1, 50, 25]),
    ],
  },
  'slots in blocks turned twice, and mirrored': {
    isClosed: true,
    blocks: { A: slot, B: insert('A', [50, 45]) },
    entities: [...insert('B', [50, 45]), ...insertAt(60, 0, 'B', [41, -1])],
  },
  'curve-fit and spline-fit polylines': {
    entities: [
      ...[
        0,
        'POLYLINE',
        8,
        'P',
        66,
        1,
        70,
        3,
        ...vertices('0,0,0.2 5,1,0.3 9,0,0.4 9,6,0.3 2,7,0.5', 1),
        0,
        'SEQEND',
      ],
      ...[0, 'POLYLINE', 8, 'P', 66, 1, 70, 5, ...vertices('20,0 25,1 29,0 29,6', 8), 0, 'SEQEND'],
    ],
  },
};

const markers: Readonly<Record<string, readonly string[]>> = {
  LINE: ['AcDbLine'],
  CIRCLE: ['AcDbCircle'],
  ARC: ['AcDbCircle'],
  LWPOLYLINE: ['AcDbPolyline'],
  POLYLINE: ['AcDb2dPolyline'],
  VERTEX: ['AcDbVertex', 'AcDb2dVertex'],
  SPLINE: ['AcDbSpline'],
  INSERT: ['AcDbBlockReference'],
  SEQEND: [],
};

/** Groups as entities with their subclass markers behind the layer. */
function entitiesOf(groups: Groups): Pair[][] {
  const entities: Pair[][] = [];
  for (let i = 0; i < groups.length; i += 2) {
    const [code, value] = [Number(groups[i]), groups[i + 1] ?? ''];
    if (code === 0)
      entities.push([
        [0, value],
        [100, 'AcDbEntity'],
      ]);
    else entities[entities.length - 1]?.push([code, value]);
    const kind = String(entities[entities.length - 1]?.[0]?.[1]);
    if (code === 8)
      entities[entities.length - 1]?.push(...(markers[kind] ?? []).map((marker): Pair => [100, marker]));
    if (kind === 'ARC' && code === 40) entities[entities.length - 1]?.push([100, 'AcDbArc']);
  }
  return entities;
}

/** A whole file, with the handles and subclass markers that ezdxf wants. */
export const hardDrawingText = ({ blocks = {}, entities }: HardCase): string =>
  dxfText({
    about: 'hard case',
    unitCode: 4,
    layers: ['PART', 'S', 'P'].map((name) => ({ name, color: 7, lineType: 'CONTINUOUS' })),
    blocks: Object.entries(blocks).map(([name, inside]) => ({ name, entities: entitiesOf(inside) })),
    entities: entitiesOf(entities),
  });
