import { z } from 'zod';

export const technologyFormat = 'diewright-technology';
export const technologyVersion = 1;
export const technologyFileEnding = '.diewright-technology.json';

/** A millionth to a million of whatever is measured; beyond is a slip, and times and prices would be no numbers. */
const positive = z
  .number()
  .positive()
  .min(1 / 1_000_000)
  .max(1_000_000);
const notNegative = z.number().nonnegative().max(1_000_000);

/** What one pass is worth with a certain wire in a block of a certain height. */
export const technologyPassSchema = z.strictObject({
  /** Spark gap per side, mm. */
  sparkGap: notNegative.max(10),
  /** Stock left on the member after the pass, mm; 0 for the last. */
  stockLeft: notNegative.max(10),
  /** Surface that the pass cuts, length times height of the block, mm²/min. */
  rate: positive,
  /** Expected Ra of the surface that the pass leaves, µm; null where nobody has measured it. */
  roughness: positive.nullable(),
  /** Speed at which the wire is drawn off its spool, m/min. */
  wireSpeed: positive,
});

const rowSchema = z.strictObject({
  /** Diameter, mm. */
  wire: positive.max(50),
  /** The row is for blocks up to this height, mm. */
  height: positive,
  /** The rough cut first. */
  passes: z.array(technologyPassSchema).min(1).max(12),
});

/** What the machine can do, and what it costs. */
const machineSchema = z.strictObject({
  largestHeight: positive,
  /** Largest angle of the wire to the vertical, degrees. */
  largestTaperDeg: notNegative.max(60),
  /** From the block's upper face up to the point about which the upper guide swings the wire, mm. */
  upperGuideAbove: notNegative,
  /** From the block's lower face down to the point about which the lower guide swings the wire, mm. */
  lowerGuideBelow: notNegative,
  /** Minutes from one threading to the next: cutting the wire, moving, threading. */
  threadingMinutes: notNegative,
  /** Null where the shop has not said it: no price is then worked out. */
  hourlyPrice: z.strictObject({ amount: notNegative, currency: z.string().max(8) }).nullable(),
});

/** A technology table: the passes for each wire and height, and the limits of the machine that cuts by them. */
export const technologySchema = z.strictObject({
  name: z.string().max(80),
  /** What the blocks are made of, for the reader. */
  blockMaterial: z.string().max(80),
  /** Where the numbers come from. */
  note: z.string().max(500),
  machine: machineSchema,
  rows: z.array(rowSchema).max(500),
});

export type Technology = z.infer<typeof technologySchema>;
export type TechnologyRow = Technology['rows'][number];
export type TechnologyPass = TechnologyRow['passes'][number];
export type Machine = Technology['machine'];
