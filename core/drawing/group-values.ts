import type { ParsedGroup } from './parse-entities';
import { vector, type Vector } from './transform';

/** The last value of a group, or undefined where the entity has none. */
export function valueOf(groups: readonly ParsedGroup[], code: number): number | undefined {
  for (let i = groups.length - 1; i >= 0; i--) {
    const group = groups[i] as ParsedGroup;
    if (group.code === code) return group.value;
  }
  return undefined;
}

/** The point whose x is in group `code` (y is 10, z is 20 further); undefined without x or y, z 0 where absent. */
export function pointOf(groups: readonly ParsedGroup[], code: number): Vector | undefined {
  const x = valueOf(groups, code);
  const y = valueOf(groups, code + 10);
  return x === undefined || y === undefined ? undefined : vector(x, y, valueOf(groups, code + 20) ?? 0);
}

/** Groups 210, 220, 230; (0, 0, 1) where absent. */
export const extrusionOf = (groups: readonly ParsedGroup[]): Vector =>
  vector(valueOf(groups, 210) ?? 0, valueOf(groups, 220) ?? 0, valueOf(groups, 230) ?? 1);
