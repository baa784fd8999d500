import { z } from 'zod';
import { cutChoiceSchema, leadSchema, newLead, newSetup, setupSchema } from './cut-settings';
import { cornersSchema, newCorners } from './die/corner-rules';
import { newRelief, reliefSchema } from './die/relief-rules';
import { dieSetSchema, newDieSet } from './die-set-settings';
import { asStockMaterial, ownMaterialSchema } from './die/own-material';
import { stockMaterial, type StockMaterial } from './die/stock-materials';
import { repairSwitches, type RepairSwitch } from './drawing/drawing';
import { tolerance } from './geometry/tolerance';
import { inspectionSchema, newInspection, newSheet, sheetSchema } from './inspection-settings';
import { passSchema, type JobPass } from './job-pass';
import { migrateJob } from './migrate-job';
import { neutralStyle } from './neutral-style';
import type { PartName, PlateName } from './plan';
import { invariant } from './problem';
import { programStyleSchema } from './program-style';
import { shippedTechnology } from './shipped-technology';
import { technologySchema } from './technology';
import { drawingUnits, type DrawingUnit } from './units';
import { tabulatedPasses } from './wire/tabulated-passes';

export const jobFormat = 'diewright-job';
export const jobVersion = 1;
export const jobFileEnding = '.diewright.json';

/** mm; no part is larger. */
const positive = z.number().positive().max(10_000);
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

const clearanceSchema = z.discriminatedUnion('rule', [
  /** From the stock table. */
  z.strictObject({ rule: z.literal('table') }),
  /** For a wanted kind of edge, 1 to 5. */
  z.strictObject({
    rule: z.literal('edge type'),
    type: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(5)]),
  }),
  /** By the square-root formula with this factor. */
  z.strictObject({ rule: z.literal('square root'), factor: positive }),
  /** Typed, mm per side. */
  z.strictObject({ rule: z.literal('typed'), perSide: positive }),
  /** Percent of the stock thickness, per side. */
  z.strictObject({ rule: z.literal('percent'), percent: positive }),
]);

const jobShape = z.strictObject({
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
  /** Materials that the user added to the stock table. */
  ownMaterials: z.array(ownMaterialSchema).default([]),
  clearance: clearanceSchema,
  /** What a contour is used for where it differs from the rule (outer blanks, inner pierces), by contour id. */
  uses: z.record(z.string(), z.enum(['blank', 'pierce', 'mate', 'leave out'])),
  /** By how much a contour is made larger on each side before clearance is applied, mm, by contour id. */
  sizeShifts: z.record(z.string(), z.number().min(-100).max(100)).default({}),
  /** mm; a hundred times the thickest in use is a slip. */
  wire: z.strictObject({ diameter: positive.max(50) }),
  /** Arrangement, further members, force, strength, sections and strip of the die set. */
  dieSet: dieSetSchema,
  /** Heights of the blocks that die and punch are cut from, mm; the defaults are common practice. */
  blocks: z.strictObject({ die: positive, punch: positive }).default({ die: 25, punch: 50 }),
  /** Whole, so that the job needs no other file, also where its wire or a block is changed later. */
  technology: technologySchema.default(shippedTechnology),
  /** Whether the passes follow the table when wire or height changes, or were typed and stay. */
  passRule: z.enum(['table', 'typed']).default('typed'),
  /** The passes in use. The rough cut first, then any number of skims. */
  passes: z.array(passSchema).min(1),
  /** Those of the punch, where its height asks for others than the die's; null: the same. */
  punchPasses: z.array(passSchema).min(1).nullable().default(null),
  /** What becomes of the members' corners, and how the wire runs round them. */
  corners: cornersSchema,
  /** How the die opening widens below its cutting edge. */
  relief: reliefSchema,
  lead: leadSchema,
  setup: setupSchema,
  /** What a person chose for single cuts against the rules above, by cut id. */
  cuts: z.record(z.string(), cutChoiceSchema).default({}),
  output: z.strictObject({
    unit: z.enum(['mm', 'inch']),
    /** The path of the wire's centre, or the contour with G41/G42 and an offset table. */
    program: z.enum(['wire centre', 'compensated']),
    style: programStyleSchema.default(neutralStyle),
  }),
  inspection: inspectionSchema,
  sheet: sheetSchema,
  /** Findings a person has accepted, by finding key, with the reason that goes onto the sheet. */
  settled: z.record(z.string(), z.strictObject({ reason: z.string().min(1) })),
});

/** Job files of every age: fields that were once called otherwise are brought to their present names first. */
export const jobSchema = z.preprocess(migrateJob, jobShape);

export type Job = z.infer<typeof jobSchema>;
export type { JobPass } from './job-pass';
export type ContourUse = Job['uses'][string];

/** The passes that cut a part; a part without its own is cut like the die. */
export function passesOf(
  job: Pick<Job, 'passes' | 'punchPasses' | 'dieSet'>,
  part: PartName,
): readonly JobPass[] {
  if (part === 'die') return job.passes;
  return (part === 'punch' ? job.punchPasses : job.dieSet[part].passes) ?? job.passes;
}

/** Height of the block that a part is cut from, mm. */
export const heightOf = (job: Pick<Job, 'blocks' | 'dieSet'>, part: PartName): number =>
  part === 'die' || part === 'punch' ? job.blocks[part] : job.dieSet[part].height;

/** The plates and the parts that the job makes. */
export const platesOf = ({ dieSet }: Pick<Job, 'dieSet'>): readonly PlateName[] =>
  (['stripper', 'retainer'] as const).filter((plate) => dieSet[plate].make);
export const partsOf = (job: Pick<Job, 'dieSet'>): readonly PartName[] => ['die', 'punch', ...platesOf(job)];

/** Something of every part. */
export const byPart = <T>(of: (part: PartName) => T): Readonly<Record<PartName, T>> => ({
  die: of('die'),
  punch: of('punch'),
  stripper: of('stripper'),
  retainer: of('retainer'),
});

/** The job's own materials as rows of the stock table. */
export const ownMaterialsOf = (job: Pick<Job, 'ownMaterials'>): readonly StockMaterial[] =>
  job.ownMaterials.map(asStockMaterial);

/** The stock's row; undefined where the job names a material that neither it nor the table has. */
export const materialOf = (job: Pick<Job, 'stock' | 'ownMaterials'>): StockMaterial | undefined =>
  stockMaterial(job.stock.material, ownMaterialsOf(job));

/** The stock's name; its id where the material is unknown. */
export const materialName = (job: Pick<Job, 'stock' | 'ownMaterials'>): string =>
  materialOf(job)?.name ?? job.stock.material;

/**
 * A new job on a drawing, with starting values of common practice: 1 mm soft cold-rolled steel, table clearance,
 * 0.25 mm wire, the shipped technology table's one rough and two skims, spark-eroded start holes of 1 mm.
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
    ownMaterials: [],
    clearance: { rule: 'table' },
    uses: {},
    sizeShifts: {},
    wire: { diameter: 0.25 },
    dieSet: newDieSet,
    blocks: { die: 25, punch: 50 },
    technology: shippedTechnology,
    passRule: 'table',
    passes: shippedPasses(0.25, 25),
    punchPasses: null,
    corners: newCorners,
    relief: newRelief,
    lead: newLead,
    setup: newSetup,
    cuts: {},
    output: { unit: 'mm', program: 'wire centre', style: neutralStyle },
    inspection: newInspection,
    sheet: newSheet,
    settled: {},
  };
}

/** Passes that the shipped table has the same for blocks of 25 and 50 mm. */
function shippedPasses(wire: number, height: number): JobPass[] {
  const passes = tabulatedPasses(shippedTechnology, wire, height);
  invariant(passes.ok, 'the shipped table has the starting wire');
  return passes.value.map((pass) => ({ ...pass, feed: null }));
}
