/**
 * The groups that are read of each kind of entity (DXF reference, ENTITIES section). All others are passed over, and so
 * is an embedded object. A kind that is not in this table is counted and nothing more.
 */
const curveGroups: Readonly<Record<string, readonly number[]>> = {
  LINE: [10, 20, 30, 11, 21, 31],
  CIRCLE: [10, 20, 30, 40],
  ARC: [10, 20, 30, 40, 50, 51],
  ELLIPSE: [10, 20, 30, 11, 21, 31, 40, 41, 42],
  LWPOLYLINE: [90, 70, 38, 10, 20, 42],
  POLYLINE: [70, 10, 20, 30],
  VERTEX: [10, 20, 30, 42, 70],
  SPLINE: [70, 71, 40, 41, 10, 20, 30, 11, 21, 31, 12, 22, 32, 13, 23, 33],
  MLINE: [40, 71, 72, 73, 10, 20, 30, 11, 21, 31, 12, 22, 32, 13, 23, 33, 41, 74],
  INSERT: [10, 20, 30, 41, 42, 43, 44, 45, 50, 70, 71],
};

/** Kinds that help where they can be read and do no harm where they cannot. */
const asideGroups: Readonly<Record<string, readonly number[]>> = {
  SOLID: [10, 20, 30, 11, 21, 31, 12, 22, 32, 13, 23, 33],
  TRACE: [10, 20, 30, 11, 21, 31, 12, 22, 32, 13, 23, 33],
  HATCH: [...[10, 20, 30, 11, 21, 40, 42, 50, 51], ...[72, 73, 74, 75, 91, 92, 93, 94, 95, 96, 97, 98]],
  TEXT: [10, 20, 30],
  MTEXT: [10, 20, 30],
  ATTRIB: [10, 20, 30],
  DIMENSION: [...[10, 20, 30, 11, 21, 31, 13, 23, 33, 14, 24, 34, 15, 25, 35], ...[40, 42, 50, 70]],
};

/** Invisible, paper space, colour, extrusion. */
const groupsOfAll = [60, 67, 62, 210, 220, 230];

const tableOf = (
  groups: Readonly<Record<string, readonly number[]>>,
): ReadonlyMap<string, ReadonlySet<number>> =>
  new Map(Object.entries(groups).map(([kind, codes]) => [kind, new Set([...codes, ...groupsOfAll])]));

const curves = tableOf(curveGroups);
const aside = tableOf(asideGroups);
const others: ReadonlySet<number> = new Set([60, 67, 62]);

/** The groups to read of a kind of entity. */
export const groupsOf = (kind: string): ReadonlySet<number> => curves.get(kind) ?? aside.get(kind) ?? others;

/** Whether a kind of entity is drawn as the edge of a part (or brings such: INSERT). */
export const isCurveKind = (kind: string): boolean => curves.has(kind) && kind !== 'VERTEX';

/** Fillings: their boundary stands in for an outline where nothing else closes. */
export const isFillingKind = (kind: string): boolean =>
  kind === 'HATCH' || kind === 'SOLID' || kind === 'TRACE';

/** Groups 60 to 99 are whole numbers. */
export const isWholeGroup = (code: number): boolean => code >= 60 && code <= 99;
