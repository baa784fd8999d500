import type { Pair } from './dxf-text';

/** The entities that our samples are drawn with. Numbers are written as the shortest text that reads back the same. */

const head = (kind: string, layer: string, marker: string): Pair[] => [
  [0, kind],
  [100, 'AcDbEntity'],
  [8, layer],
  [100, marker],
];

export const line = (layer: string, x0: number, y0: number, x1: number, y1: number): Pair[] => [
  ...head('LINE', layer, 'AcDbLine'),
  [10, x0],
  [20, y0],
  [30, 0],
  [11, x1],
  [21, y1],
  [31, 0],
];

export const circle = (layer: string, x: number, y: number, radius: number): Pair[] => [
  ...head('CIRCLE', layer, 'AcDbCircle'),
  [10, x],
  [20, y],
  [30, 0],
  [40, radius],
];

/** Counter-clockwise from one angle to the other, degrees. */
export const arc = (
  layer: string,
  x: number,
  y: number,
  radius: number,
  fromDeg: number,
  toDeg: number,
): Pair[] => [
  ...circle(layer, x, y, radius).map((pair): Pair => (pair[0] === 0 ? [0, 'ARC'] : pair)),
  [100, 'AcDbArc'],
  [50, fromDeg],
  [51, toDeg],
];

/** Vertices are x, y and, where the segment that leaves them is an arc, its bulge. */
export const closedPolyline = (
  layer: string,
  vertices: readonly (readonly [x: number, y: number, bulge?: number])[],
): Pair[] => [
  ...head('LWPOLYLINE', layer, 'AcDbPolyline'),
  [90, vertices.length],
  [70, 1],
  ...vertices.flatMap(([x, y, bulge = 0]): Pair[] => [
    [10, x],
    [20, y],
    ...(bulge === 0 ? [] : [[42, bulge] as const]),
  ]),
];

/** Ratio is minor over major half-diameter; angles in radians, a whole turn by default. */
export const ellipse = (
  layer: string,
  x: number,
  y: number,
  majorX: number,
  majorY: number,
  ratio: number,
): Pair[] => [
  ...head('ELLIPSE', layer, 'AcDbEllipse'),
  [10, x],
  [20, y],
  [30, 0],
  [11, majorX],
  [21, majorY],
  [31, 0],
  [210, 0],
  [220, 0],
  [230, 1],
  [40, ratio],
  [41, 0],
  [42, 2 * Math.PI],
];

/** A clamped cubic spline with evenly spaced knots. */
export function spline(layer: string, points: readonly (readonly [x: number, y: number])[]): Pair[] {
  const spans = points.length - 3;
  const knots = [0, 0, 0, ...Array.from({ length: spans + 1 }, (_, i) => i), spans, spans, spans];
  return [
    ...head('SPLINE', layer, 'AcDbSpline'),
    [70, 8],
    [71, 3],
    [72, knots.length],
    [73, points.length],
    [74, 0],
    ...knots.map((knot): Pair => [40, knot]),
    ...points.flatMap(([x, y]): Pair[] => [
      [10, x],
      [20, y],
      [30, 0],
    ]),
  ];
}

export const text = (layer: string, x: number, y: number, height: number, words: string): Pair[] => [
  ...head('TEXT', layer, 'AcDbText'),
  [10, x],
  [20, y],
  [30, 0],
  [40, height],
  [1, words],
  [100, 'AcDbText'],
];

/** A block set as an array of columns and rows. */
export const insertArray = (
  layer: string,
  block: string,
  x: number,
  y: number,
  array: { readonly columns: number; readonly rows: number; readonly dx: number; readonly dy: number },
): Pair[] => [
  ...head('INSERT', layer, 'AcDbBlockReference'),
  [2, block],
  [10, x],
  [20, y],
  [30, 0],
  [70, array.columns],
  [71, array.rows],
  [44, array.dx],
  [45, array.dy],
];

/** A level dimension between two points, drawn by its own block. */
export const levelDimension = (
  layer: string,
  block: string,
  from: readonly [number, number],
  to: readonly [number, number],
  lineY: number,
  /** What is written in place of the measured length; with <> for it. */
  words = '',
): Pair[] => [
  ...head('DIMENSION', layer, 'AcDbDimension'),
  [2, block],
  [10, to[0]],
  [20, lineY],
  [30, 0],
  [11, (from[0] + to[0]) / 2],
  [21, lineY],
  [31, 0],
  [70, 32],
  ...(words === '' ? [] : [[1, words] as const]),
  [3, 'STANDARD'],
  [100, 'AcDbAlignedDimension'],
  [13, from[0]],
  [23, from[1]],
  [33, 0],
  [14, to[0]],
  [24, to[1]],
  [34, 0],
  [50, 0],
  [100, 'AcDbRotatedDimension'],
];
