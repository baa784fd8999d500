import { z } from 'zod';

/** mm; no block is larger. */
const positive = z.number().positive().max(10_000);
const notNegative = z.number().nonnegative().max(10_000);

/** More tabs than a person would cut off one by one. */
export const mostTabs = 12;

/** Start holes, lead-ins, tabs and direction of all cuts. mm. */
export const leadSchema = z.strictObject({
  holeDiameter: positive,
  /** From the hole's edge to the path. */
  holeClearance: notNegative,
  /** Wanted length of the lead-in from the hole's centre to the path. */
  length: positive,
  /** How the wire comes to the contour: square on it, straight from the hole, or by an arc that runs into it. */
  shape: z.enum(['perpendicular', 'straight', 'tangent arc']).default('perpendicular'),
  arcRadius: positive.default(0.5),
  /** How far a pass runs over what was cut before it, where a loop closes and at both ends of a tab. */
  overlap: notNegative.default(0),
  /** Whether circles of the drawing that lie in the waste are threaded through. */
  drawnHoles: z.boolean().default(false),
  tabRule: z.enum(['typed', 'weight']).default('typed'),
  /** The typed length. */
  tabLength: notNegative,
  /** Number of tabs where their length is typed. */
  tabs: z.int().min(1).max(mostTabs).default(1),
  /** What becomes of the piece inside a die opening. */
  slug: z.enum(['dropped', 'kept']).default('kept'),
  direction: z.enum(['counter-clockwise', 'clockwise']),
});

const boxSchema = z
  .strictObject({ minX: z.number(), minY: z.number(), maxX: z.number(), maxY: z.number() })
  .refine(({ minX, minY, maxX, maxY }) => minX < maxX && minY < maxY, {
    error: 'the left and lower edge of a block lie before the right and upper one',
  });

/** The blocks in the machine and the order of work. mm. */
const setupShape = z.strictObject({
  /** Which dies share a block: those that lie beside one another, all with the inner ones first, or none. */
  dies: z.enum(['together', 'one block', 'apart']),
  punches: z.enum(['together', 'apart']),
  /** Least steel to be left between the block's edge and anything that is cut. */
  frame: notNegative,
  /** Strips along the block's edges that the clamps take. */
  clamps: z.strictObject({ left: notNegative, right: notNegative, bottom: notNegative, top: notNegative }),
  sequence: z.enum(['part by part', 'roughing first']),
  /** Blocks whose outline was typed, by block id; the others are as small as frame and clamps allow. */
  outlines: z.record(z.string(), boxSchema),
});

export type SetupSettings = z.infer<typeof setupShape>;

/** Starting values: common practice. */
export const newSetup: SetupSettings = {
  dies: 'together',
  punches: 'apart',
  frame: 5,
  clamps: { left: 0, right: 0, bottom: 0, top: 0 },
  sequence: 'part by part',
  outlines: {},
};

export const setupSchema = setupShape.default(newSetup);

const pointSchema = z.strictObject({ x: z.number(), y: z.number() });

/** One stretch between tabs: where its wire is threaded, and where its lead-in and the tab before it are. */
const stretchChoiceSchema = z.strictObject({
  /** Centre of the start hole; null: placed by the rule. */
  hole: pointSchema.nullable().default(null),
  holeDiameter: positive.nullable().default(null),
  /** Middle of the tab before the stretch, or of the lead-in where there is no tab: the nearest point of the contour. */
  place: pointSchema.nullable().default(null),
  tabLength: positive.nullable().default(null),
});

/** What a person chose for one cut; null: as all others. */
export const cutChoiceSchema = z.strictObject({
  tabs: z.int().min(0).max(mostTabs).nullable().default(null),
  slug: z.enum(['dropped', 'kept']).nullable().default(null),
  /** Cut in from the block's edge, without a start hole. */
  fromEdge: z.boolean().default(false),
  stretches: z.array(stretchChoiceSchema).max(mostTabs).default([]),
});

export type LeadSettings = z.infer<typeof leadSchema>;
export type CutChoice = z.infer<typeof cutChoiceSchema>;
export type StretchChoice = CutChoice['stretches'][number];

/** Starting values of common practice: spark-eroded holes of 1 mm, a lead-in of 3 mm. */
export const newLead: LeadSettings = {
  holeDiameter: 1,
  holeClearance: 0.3,
  length: 3,
  shape: 'perpendicular',
  arcRadius: 0.5,
  overlap: 0.2,
  drawnHoles: true,
  tabRule: 'weight',
  tabLength: 2,
  tabs: 1,
  slug: 'dropped',
  direction: 'counter-clockwise',
};

/** A cut of which nobody chose anything. */
export const noChoice: CutChoice = { tabs: null, slug: null, fromEdge: false, stretches: [] };

export const noStretch: StretchChoice = { hole: null, holeDiameter: null, place: null, tabLength: null };
