import type { MaterialFamily } from './edge-types';
import { commonPractice, type Sourced } from './sourced';

const practice = (value: number) => commonPractice(value, 'common practice');

/** Least width of a pierced hole over the stock thickness. */
export const leastHole = (family: MaterialFamily | null): Sourced =>
  family === 'stainless steel' ? practice(2) : practice(1.2);

/** Least wall of stock between two holes, and between a hole and the blank's edge, over the stock thickness. */
export const leastStockWall: Sourced = practice(2);

/** Least width of the blank over the stock thickness. */
export const leastBlankWidth: Sourced = practice(1.5);

/** From an opening to the edge of the die block over the block's thickness; the second where corners are sharp. */
export const openingToEdge: Sourced = practice(1.25);
export const sharpOpeningToEdge: Sourced = practice(1.5);

/** Least wall of the die block between two openings over the stock thickness. */
export const leastDieWall: Sourced = practice(2);

/** Widths and walls up to so many stock thicknesses are worth knowing: three times the widest rule. */
export const widthsLookedAt = 6;

/** Press rating over the force of the stroke: 1.2 to 1.3. */
export const pressMargin: Sourced = practice(0.2);

/** Force on top with dull edges: 0.15 to 0.3. */
export const dullShare: Sourced = practice(0.3);

/** Travel from contact to break over the stock thickness: a third to a half in most sheet. */
export const penetrationShare: Sourced = practice(0.4);

/** Capacity of a punch over its force. */
export const punchSafety: Sourced = practice(1.5);

/** From the middle of a screw or dowel to the block's edge and to an opening, over its diameter. */
export const screwEdge: Sourced = practice(1.5);

/** Least travel of the punch beyond the stock into the die, mm. */
export const entryTravel: Sourced = practice(0.5);

/** Factor of the rule of force for the block's thickness, by length of cut, mm. */
export const blockFactors: readonly { readonly upTo: number; readonly factor: number }[] = [
  { upTo: 50, factor: 1 },
  { upTo: 75, factor: 1.25 },
  { upTo: 150, factor: 1.37 },
  { upTo: 300, factor: 1.5 },
  { upTo: 500, factor: 1.6 },
  { upTo: Infinity, factor: 1.7 },
];

export const blockFactorSource = 'press tool design texts, from memory';

/** Least thickness of a die block by the stock's thickness, in: mild steel strip. */
export const blockByStock: readonly { readonly upToInch: number; readonly blockInch: number }[] = [
  { upToInch: 1 / 16, blockInch: 3 / 4 },
  { upToInch: 1 / 8, blockInch: 1 },
  { upToInch: 3 / 16, blockInch: 9 / 8 },
  { upToInch: 1 / 4, blockInch: 11 / 8 },
  { upToInch: Infinity, blockInch: 13 / 8 },
];

export const blockByStockSource = 'die block thickness for mild steel strip, common practice';

/** Screws and dowels by the block's thickness, mm: nominal diameter (socket head screws, press tool handbooks, from memory). */
export const screwByBlock: readonly { readonly upTo: number; readonly diameter: number }[] = [
  { upTo: 16, diameter: 5 },
  { upTo: 20, diameter: 6 },
  { upTo: 25, diameter: 8 },
  { upTo: 32, diameter: 10 },
  { upTo: Infinity, diameter: 12 },
];
