import { z } from 'zod';
import { repairSwitches, type RepairSwitch } from './drawing/drawing';
import { tolerance } from './geometry/tolerance';
import { drawingUnits, type DrawingUnit } from './units';

export const jobFormat = 'diewright-job';
export const jobVersion = 1;
export const jobFileEnding = '.diewright.json';

const positive = z.number().positive();
const notNegative = z.number().nonnegative();
const unitNames = Object.keys(drawingUnits) as [DrawingUnit, ...DrawingUnit[]];

const repairNames = repairSwitches as readonly [RepairSwitch, ...RepairSwitch[]];

/** What of the drawing is taken; a job saved before there was a choice takes what the rule takes. */
const choiceSchema = z
  .strictObject({
    /** Only these layers, off and frozen ones among them; null: all that are shown. */
    layers: z.array(z.string()).nullable(),
    /** Only these colours (colour index; in an SVG 0xRRGGBB); null: all. */
    colours: z.array(z.int().nonnegative()).nullable(),
    /** Contours taken or left out against the rule, by id. */
    contours: z.record(z.string(), z.enum(['take', 'leave out'])),
  })
  .default({ layers: null, colours: null, contours: {} });

const passSchema = z.strictObject({
  /** Spark gap per side, mm. */
  sparkGap: notNegative,
  /** Stock left on the member after this pass, mm; 0 for the last. */
  stockLeft: notNegative,
  /** Feed of the neutral program, mm/min. */
  feed: positive,
});

const clearanceSchema = z.discriminatedUnion('rule', [
  /** From the stock table. */
  z.strictObject({ rule: z.literal('table') }),
  /** Typed, mm per side. */
  z.strictObject({ rule: z.literal('typed'), perSide: positive }),
  /** Percent of the stock thickness, per side. */
  z.strictObject({ rule: z.literal('percent'), percent: positive }),
]);

export const jobSchema = z.strictObject({
  format: z.literal(jobFormat),
  version: z.literal(jobVersion),
  name: z.string(),
  drawing: z.strictObject({
    fileName: z.string(),
    /** The drawing's bytes, one character a byte (Latin-1), so that the job is whole in one file. */
    content: z.string(),
    /** What the user answered; null: as the drawing states. */
    unit: z.enum(unitNames).nullable(),
    /** End points nearer than this are joined, mm. */
    gapTolerance: positive,
    choice: choiceSchema,
    /** Kinds of repair that are not to be made. */
    repairsOff: z.array(z.enum(repairNames)).default([]),
  }),
  stock: z.strictObject({ material: z.string(), thickness: positive }),
  clearance: clearanceSchema,
  /** What a contour is used for where it differs from the rule (outer blanks, inner pierces), by contour id. */
  uses: z.record(z.string(), z.enum(['blank', 'pierce', 'leave out'])),
  /** By how much a contour is made larger on each side before clearance is applied, mm, by contour id. */
  sizeShifts: z.record(z.string(), z.number()).default({}),
  wire: z.strictObject({ diameter: positive }),
  /** The rough cut first, then any number of skims. */
  passes: z.array(passSchema).min(1),
  /** Round the punch's outside corners so that the clearance stays even where the die keeps a fillet. */
  punchCorners: z.enum(['as drawn', 'match the die']),
  /** The other way round: the die's outside corners where the punch keeps a fillet. A blank then gets that radius. */
  dieCorners: z.enum(['as drawn', 'match the punch']),
  lead: z.strictObject({
    holeDiameter: positive,
    /** From the hole's edge to the path, mm. */
    holeClearance: notNegative,
    /** Wanted length of the straight lead-in from the hole's centre to the path, mm. */
    length: positive,
    tabLength: notNegative,
    direction: z.enum(['counter-clockwise', 'clockwise']),
  }),
  output: z.strictObject({
    unit: z.enum(['mm', 'inch']),
    /** The path of the wire's centre, or the contour with G41/G42 and an offset table. */
    program: z.enum(['wire centre', 'compensated']),
  }),
  /** Findings a person has accepted, by finding key, with the reason that goes onto the sheet. */
  settled: z.record(z.string(), z.strictObject({ reason: z.string().min(1) })),
});

export type Job = z.infer<typeof jobSchema>;
export type JobPass = Job['passes'][number];
export type ContourUse = Job['uses'][string];

/**
 * A new job on a drawing, with starting values of common practice: 1 mm soft cold-rolled steel, table clearance,
 * 0.25 mm wire, one rough and two skims (skims of 0.003–0.015 mm: common practice), spark-eroded start holes of 1 mm.
 */
export function newJob(fileName: string, content: string): Job {
  return {
    format: jobFormat,
    version: jobVersion,
    name: fileName.replace(/\.[^.]*$/, ''),
    drawing: {
      fileName,
      content,
      unit: null,
      gapTolerance: tolerance.gap,
      choice: { layers: null, colours: null, contours: {} },
      repairsOff: [],
    },
    stock: { material: 'cold-rolled-soft', thickness: 1 },
    clearance: { rule: 'table' },
    uses: {},
    sizeShifts: {},
    wire: { diameter: 0.25 },
    passes: [
      { sparkGap: 0.025, stockLeft: 0.015, feed: 4 },
      { sparkGap: 0.022, stockLeft: 0.004, feed: 6 },
      { sparkGap: 0.02, stockLeft: 0, feed: 8 },
    ],
    punchCorners: 'as drawn',
    dieCorners: 'as drawn',
    lead: { holeDiameter: 1, holeClearance: 0.3, length: 3, tabLength: 2, direction: 'counter-clockwise' },
    output: { unit: 'mm', program: 'wire centre' },
    settled: {},
  };
}
