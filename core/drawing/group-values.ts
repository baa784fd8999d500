import { chained, planeOf, vector, type Transform, type Vector } from './transform';

/** The numbers of one entity: a range of two columns, in the order of the file. Groups that are not read are NaN. */
export interface Groups {
  readonly codes: Int32Array;
  readonly values: Float64Array;
  readonly from: number;
  readonly to: number;
}

/** The last value of a group, or undefined where the entity has none. */
export function valueOf({ codes, values, from, to }: Groups, code: number): number | undefined {
  for (let i = to - 1; i >= from; i--) if (codes[i] === code) return values[i];
  return undefined;
}

/** All values of a group in order. */
export function valuesOf({ codes, values, from, to }: Groups, code: number): number[] {
  const found: number[] = [];
  for (let i = from; i < to; i++) if (codes[i] === code) found.push(values[i] as number);
  return found;
}

/** The point whose x is in group `code` (y is 10, z is 20 further); undefined without x or y, z 0 where absent. */
export function pointOf(groups: Groups, code: number): Vector | undefined {
  const x = valueOf(groups, code);
  const y = valueOf(groups, code + 10);
  return x === undefined || y === undefined ? undefined : vector(x, y, valueOf(groups, code + 20) ?? 0);
}

/** Groups 210, 220, 230; (0, 0, 1) where absent. */
export const extrusionOf = (groups: Groups): Vector =>
  vector(valueOf(groups, 210) ?? 0, valueOf(groups, 220) ?? 0, valueOf(groups, 230) ?? 1);

/** From an entity's own plane (by its extrusion) to where `place` puts it; most entities lie in the drawing's plane. */
export function planeIn(place: Transform, groups: Groups): Transform {
  const { x, y, z } = extrusionOf(groups);
  return x === 0 && y === 0 && z > 0 ? place : chained(place, planeOf({ x, y, z }));
}
