import { shortNumber } from '../say';
import * as portable from '../geometry/portable-math';

export const materialFamilies = [
  'low-carbon steel',
  'high-carbon steel',
  'stainless steel',
  'brass',
  'copper',
  'aluminium',
] as const;
export type MaterialFamily = (typeof materialFamilies)[number];

/** Five kinds of sheared edge, 1 for the largest clearance, 5 for the smallest. */
export type EdgeType = 1 | 2 | 3 | 4 | 5;
export const edgeTypes: readonly EdgeType[] = [1, 2, 3, 4, 5];

export const edgeTypeSource = 'ASM Handbook vol. 14B, edge types, from memory';

/** What each edge looks like and what it costs (ASM Handbook vol. 14B, from memory, in our words). */
export const edgeTypeWords: Readonly<Record<EdgeType, string>> = {
  1: 'large rollover, a rough slanted break and a tall burr; the least force and wear',
  2: 'clear rollover, mostly break, a moderate burr that grows slowly; long edge life',
  3: 'small rollover, about a third burnished, a low burr; the usual choice',
  4: 'little rollover, mostly burnished with patches of a second shear, a sharp medium burr; more force and wear',
  5: 'an almost square, burnished edge with a full second shear and a squeezed burr; the most force and wear',
};

type Range = readonly [from: number, to: number];

/** Percent of the thickness per side (ASM Handbook vol. 14B, from memory). No row: the table has none. */
const percentages: Readonly<Partial<Record<MaterialFamily, Readonly<Record<EdgeType, Range>>>>> = {
  'low-carbon steel': { 1: [21, 21], 2: [11.5, 12.5], 3: [8, 10], 4: [5, 7], 5: [1, 2] },
  'high-carbon steel': { 1: [25, 25], 2: [17, 19], 3: [14, 16], 4: [11, 13], 5: [2.5, 5] },
  'stainless steel': { 1: [23, 23], 2: [12.5, 13.5], 3: [9, 11], 4: [3, 5], 5: [1, 2] },
  brass: { 1: [21, 21], 2: [8, 10], 3: [6, 8], 4: [2, 3], 5: [0.5, 1] },
  copper: { 1: [25, 25], 2: [8, 9], 3: [5, 7], 4: [2, 4], 5: [0.5, 1] },
};

/** Clearance per side for a wanted edge, as a fraction of the thickness; null where the table has no such metal. */
export function edgeTypeFraction(family: MaterialFamily | null, type: EdgeType): number | null {
  const range = family ? percentages[family]?.[type] : undefined;
  return range ? (range[0] + range[1]) / 200 : null;
}

/** The edge type whose clearance comes nearest, by ratio; null where the table has no such metal. */
export function nearestEdgeType(family: MaterialFamily | null, fraction: number): EdgeType | null {
  const row = family ? percentages[family] : undefined;
  if (!row) return null;
  const away = (type: EdgeType): number => {
    const [from, to] = row[type];
    return Math.max(portable.log(from / (100 * fraction)), portable.log((100 * fraction) / to), 0);
  };
  return edgeTypes.reduce((best, type) => (away(type) < away(best) ? type : best));
}

/**
 * What a clearance does to burr and edge, in one sentence. By edge type where the table has the metal, else by the
 * usual range of 2 to 10 % (Kalpakjian & Schmid, figure 16.3).
 */
export function edgeEffect(family: MaterialFamily | null, fraction: number): string {
  const percent = `${shortNumber(100 * fraction)} % per side`;
  const type = nearestEdgeType(family, fraction);
  if (type) return `${percent} makes about edge type ${type}: ${edgeTypeWords[type]} (${edgeTypeSource}).`;
  const words =
    fraction < 0.02
      ? 'a second sheared band, a squeezed burr, more force and wear'
      : fraction > 0.1
        ? 'a large rollover and a tall burr'
        : 'the usual edge, part burnished and part broken, with a low burr';
  return `${percent} makes ${words} (2 to 10 % is usual: Kalpakjian & Schmid, figure 16.3).`;
}
