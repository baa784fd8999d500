import { z } from 'zod';
import { entryTravel, dullShare, penetrationShare, pressMargin } from './die/die-rules';
import { endConditions } from './die/punch-strength';
import { passSchema } from './job-pass';

/** N, N/mm and MPa; beyond is no tool. */
const positive = z.number().positive().max(1_000_000_000);
/** mm; no tool is larger. */
const length = z.number().positive().max(10_000);
const notNegative = z.number().nonnegative().max(10_000);
const share = z.number().min(0).max(2);

/** How a plug sits in its hole: by a typed allowance per side (negative: press), or by ISO 286 classes. */
const fitSchema = z.discriminatedUnion('rule', [
  z.strictObject({ rule: z.literal('allowance'), perSide: z.number().min(-10).max(10) }),
  z.strictObject({
    rule: z.literal('iso'),
    hole: z.string(),
    shaft: z.string(),
    /** mm; null: the contour's own size. */
    nominal: length.nullable(),
  }),
]);

/** A plate with openings that fit the punches. mm. */
const plateSchema = z.strictObject({
  /** Whether it is made at all. */
  make: z.boolean(),
  fit: fitSchema,
  /** Openings follow the punch, or have its corners relieved so that the wire's fillet does not bind there. */
  corners: z.enum(['as the punch', 'relieved']),
  /** Thickness of the plate. */
  height: length,
  /** Its own passes; null: those of the die. */
  passes: z.array(passSchema).min(1).nullable().default(null),
});

const shape = z.strictObject({
  /** Separate tools; pierced in one station and blanked in the next; or both in one stroke. */
  arrangement: z.enum(['simple', 'two stations', 'compound']),
  /** Steps of the strip between the stations; more than one leaves idle stations between them. */
  stationsApart: z.int().min(1).max(9),
  stripper: plateSchema,
  retainer: plateSchema,
  /** For contours used as a plug and its hole, and for those that have a fit of their own, by contour id. */
  plugFit: fitSchema,
  plugFits: z.record(z.string(), fitSchema).default({}),
  /** How the stock comes off the punch. */
  stripping: z.enum(['fixed', 'springs']),
  /** How the piece comes out of the die. */
  knockout: z.enum(['none', 'springs', 'positive']),
  springs: z.strictObject({
    /** N/mm. */
    rate: positive,
    /** Longest deflection in service, mm. */
    longestDeflection: length,
    /** Null: as many as it takes. */
    count: z.int().positive().nullable(),
  }),
  /** How far the punch goes beyond the stock, mm. */
  entry: notNegative,
  force: z.strictObject({
    by: z.enum(['shear strength', 'tensile strength']),
    /** On top with dull edges, and between the force and the press rating. */
    dull: share,
    margin: share,
    /** Rating of the press, N; null: not chosen yet. */
    rating: positive.nullable(),
  }),
  edgeShear: z.strictObject({
    shear: z.enum(['flat', 'slope', 'roof']),
    /** On which punches it is ground. */
    on: z.enum(['pierce', 'blank', 'all']),
    depth: length,
    /** Radians from +x. */
    direction: z.number(),
    /** Travel from contact to break over the thickness. */
    penetration: z.number().positive().max(1),
  }),
  punch: z.strictObject({
    /** From the retainer to the tip, mm. */
    freeLength: length,
    end: z.enum(endConditions),
    /** Compressive stress it stands, MPa. */
    permittedStress: positive,
  }),
  /** Punch and die out of one block with a tilted wire. */
  oneBlock: z.boolean(),
  sections: z.strictObject({
    of: z.enum(['none', 'die', 'punch', 'both']),
    /** Left for finish grinding, mm. */
    stock: length,
  }),
  strip: z.strictObject({
    up: z.enum(['none', 'one up', 'two up']),
    /** Radians; null: however it takes least stock. */
    turn: z.number().nullable(),
    /** mm; null: by the thickness. */
    bridge: length.nullable(),
    edge: length.nullable(),
    /** Diameter of a pilot, mm. */
    pilot: length,
  }),
});

export type DieSetSettings = z.infer<typeof shape>;
export type FitSettings = z.infer<typeof fitSchema>;
export type PlateSettings = z.infer<typeof plateSchema>;

/** Starting values: common practice. */
export const newDieSet: DieSetSettings = {
  arrangement: 'simple',
  stationsApart: 1,
  stripper: {
    make: false,
    fit: { rule: 'allowance', perSide: 0.01 },
    corners: 'relieved',
    height: 16,
    passes: null,
  },
  retainer: {
    make: false,
    fit: { rule: 'allowance', perSide: 0 },
    corners: 'relieved',
    height: 20,
    passes: null,
  },
  plugFit: { rule: 'iso', hole: 'H7', shaft: 'g6', nominal: null },
  plugFits: {},
  stripping: 'fixed',
  knockout: 'none',
  springs: { rate: 50, longestDeflection: 12, count: null },
  entry: entryTravel.value,
  force: { by: 'shear strength', dull: dullShare.value, margin: pressMargin.value, rating: null },
  edgeShear: { shear: 'flat', on: 'pierce', depth: 1, direction: 0, penetration: penetrationShare.value },
  punch: { freeLength: 30, end: 'guided', permittedStress: 1200 },
  oneBlock: false,
  sections: { of: 'none', stock: 0.1 },
  strip: { up: 'none', turn: null, bridge: null, edge: null, pilot: 3 },
};

export const dieSetSchema = shape.default(newDieSet);
