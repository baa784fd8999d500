import { outlineOf, readDrawing } from '../../../core/drawing/read-drawing';
import type { Drawing } from '../../../core/drawing/drawing';
import type { RawDrawing } from '../../../core/drawing/raw-drawing';
import type { Problem, Result } from '../../../core/problem';
import { tolerance } from '../../../core/geometry/tolerance';

/** Group pairs of a DXF, flat: code, value, code, value … */
export type Groups = readonly (string | number)[];

export const pairText = (groups: Groups): string => {
  let text = '';
  for (let i = 0; i < groups.length; i += 2) text += `${groups[i]}\n${groups[i + 1]}\n`;
  return text;
};

export interface Parts {
  readonly header?: Groups;
  readonly tables?: Groups;
  readonly blocks?: Groups;
  readonly entities?: Groups;
}

/** A DXF that states mm (or what `header` says) and holds the given entities. */
export const dxf = (parts: Parts): string => pairText(dxfGroups(parts));

/** The same as groups. */
export function dxfGroups({
  header = [9, '$INSUNITS', 70, 4],
  tables = [],
  blocks = [],
  entities = [],
}: Parts): Groups {
  const section = (name: string, groups: Groups): Groups => [0, 'SECTION', 2, name, ...groups, 0, 'ENDSEC'];
  return [
    ...section('HEADER', header),
    ...section('TABLES', tables),
    ...section('BLOCKS', blocks),
    ...section('ENTITIES', entities),
    ...[0, 'EOF'],
  ];
}

export const bytes = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0));

export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

export function problemOf(result: Result<unknown>): Problem {
  if (result.ok) throw new Error('It was read, though it should have been refused.');
  return result.problem;
}

export const raw = (text: string): RawDrawing => valueOf(readDrawing(bytes(text)));

/** The outline in mm unless the drawing states something else. */
export function outline(text: string, gap: number = tolerance.gap): Drawing {
  const drawing = raw(text);
  return valueOf(outlineOf(drawing, drawing.statedUnit ?? 'mm', gap));
}

/** The outline of entities in mm. */
export const drawn = (entities: Groups, gap?: number): Drawing => outline(dxf({ entities }), gap);

export const line = (x0: number, y0: number, x1: number, y1: number, layer = '0'): Groups => [
  0,
  'LINE',
  8,
  layer,
  10,
  x0,
  20,
  y0,
  11,
  x1,
  21,
  y1,
];

export const arc = (x: number, y: number, r: number, from: number, to: number): Groups => [
  0,
  'ARC',
  8,
  '0',
  10,
  x,
  20,
  y,
  40,
  r,
  50,
  from,
  51,
  to,
];

export const circle = (x: number, y: number, r: number, layer = '0'): Groups => [
  0,
  'CIRCLE',
  8,
  layer,
  10,
  x,
  20,
  y,
  40,
  r,
];

export const polyline = (closed: boolean, vertices: readonly (readonly number[])[], layer = '0'): Groups => [
  0,
  'LWPOLYLINE',
  8,
  layer,
  90,
  vertices.length,
  70,
  closed ? 1 : 0,
  ...vertices.flatMap(([x = 0, y = 0, bulge = 0]) => [10, x, 20, y, 42, bulge]),
];

/** Vertices as text: "0,0 4,0,1 4,3" (x, y and, where given, the bulge). */
export const xy = (text: string): number[][] => text.split(' ').map((point) => point.split(',').map(Number));

export const square = (x: number, y: number, side: number, layer = '0'): Groups =>
  polyline(
    true,
    [
      [x, y],
      [x + side, y],
      [x + side, y + side],
      [x, y + side],
    ],
    layer,
  );

export const block = (name: string, entities: Groups, base: readonly [number, number] = [0, 0]): Groups => [
  0,
  'BLOCK',
  8,
  '0',
  2,
  name,
  70,
  0,
  10,
  base[0],
  20,
  base[1],
  30,
  0,
  ...entities,
  0,
  'ENDBLK',
];

export const codesOf = (drawing: Drawing): string[] =>
  drawing.findings.map(({ weight, code }) => `${weight} ${code}`);
