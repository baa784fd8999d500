/**
 * The groups that are read of each kind of entity (DXF reference, ENTITIES section): all others are left out before
 * dxf-parser sees them, because some of them make it stop (booleans that are not 0 or 1) or lose count (91 inside an
 * LWPOLYLINE, embedded objects). A kind that is not in this table is counted and nothing more.
 */
const curveGroups: Readonly<Record<string, readonly number[]>> = {
  LINE: [10, 20, 30, 11, 21, 31],
  CIRCLE: [10, 20, 30, 40],
  ARC: [10, 20, 30, 40, 50, 51],
  ELLIPSE: [10, 20, 30, 11, 21, 31, 40, 41, 42],
  LWPOLYLINE: [90, 70, 38, 10, 20, 42],
  POLYLINE: [70, 10, 20, 30],
  VERTEX: [10, 20, 30, 42, 70],
  SPLINE: [70, 71, 40, 41, 10, 20, 30, 11],
  INSERT: [2, 10, 20, 30, 41, 42, 43, 44, 45, 50, 70, 71],
};

/** Layer, line type, invisible, paper space, extrusion. */
const groupsOfAll = [8, 6, 60, 67];
const extrusion = [210, 220, 230];

const table = new Map(
  Object.entries(curveGroups).map(([kind, codes]) => [
    kind,
    new Set([...codes, ...groupsOfAll, ...extrusion]),
  ]),
);
const others: ReadonlySet<number> = new Set(groupsOfAll);

/** The groups to read of a kind of entity. */
export const groupsOf = (kind: string): ReadonlySet<number> => table.get(kind) ?? others;

/** The kinds whose geometry is read, VERTEX aside. */
export const curveKinds: readonly string[] = Object.keys(curveGroups).filter((kind) => kind !== 'VERTEX');

export const isCurveKind = (kind: string): boolean => table.has(kind) && kind !== 'VERTEX';

/** Groups that hold text; every other group in the table is a number. */
export const isTextGroup = (code: number): boolean => code < 10;

/** Groups 60 to 99 are whole numbers. */
export const isWholeGroup = (code: number): boolean => code >= 60 && code <= 99;
