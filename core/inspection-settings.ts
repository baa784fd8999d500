import { z } from 'zod';

const positive = z.number().positive().max(10_000);
const point = z.strictObject({ x: z.number(), y: z.number() });

/** Measured points of one part, in mm as they were measured. */
const measuredSetSchema = z.strictObject({
  /** Told apart by it in lists and on sheets, e.g. "punch 1". */
  name: z.string().min(1),
  /** The list they came from. */
  fileName: z.string(),
  /** What they are compared with: the drawn outline, or the designed contour of a member by its id. */
  target: z.string(),
  points: z.array(point.extend({ id: z.string() })),
  fit: z.strictObject({
    method: z.enum(['least squares', 'minimum zone', 'as measured']),
    freedom: z.strictObject({ shiftX: z.boolean(), shiftY: z.boolean(), turn: z.boolean() }),
    outliers: z.enum(['keep', 'leave out']),
  }),
});

/** Something measured on the picture and kept for the sheet, by its points. mm. */
const readingSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('distance'), from: point, to: point }),
  z.strictObject({ kind: z.literal('gap'), from: point, to: point }),
  z.strictObject({ kind: z.literal('angle'), at: point, first: point, second: point }),
  z.strictObject({ kind: z.literal('radius'), centre: point, at: point }),
]);

const inspectionShape = z.strictObject({
  /** How far a clearance may lie from the wanted one, mm; null: a tenth of it. */
  clearanceTolerance: positive.nullable(),
  /** The profile tolerance of measured points: its whole width and how much of it lies outside the material; null half. */
  profile: z.strictObject({ width: positive, outside: z.number().nullable() }),
  measured: z.array(measuredSetSchema),
  readings: z.array(readingSchema),
});

export type InspectionSettings = z.infer<typeof inspectionShape>;
export type MeasuredSet = InspectionSettings['measured'][number];
export type PinnedReading = InspectionSettings['readings'][number];

/** Starting values: common practice. */
export const newInspection: InspectionSettings = {
  clearanceTolerance: null,
  profile: { width: 0.02, outside: null },
  measured: [],
  readings: [],
};

/** A job saved before there was inspection has none. */
export const inspectionSchema = inspectionShape.default(newInspection);

const sheetShape = z.strictObject({
  /** As the shop names it; empty until somebody says. */
  revision: z.string(),
  /** As the shop writes it: the program knows no clock. */
  date: z.string(),
  page: z.enum(['A4', 'letter']),
  /** Overlay charts that are written with the sheets: of what, and how many times as large. */
  charts: z
    .array(z.strictObject({ target: z.string(), magnification: positive }))
    .max(50)
    .default([]),
});

/** What the user states for every sheet. */
export type SheetSettings = z.infer<typeof sheetShape>;

export const newSheet: SheetSettings = { revision: '', date: '', page: 'A4', charts: [] };
export const sheetSchema = sheetShape.default(newSheet);

/** How far a clearance may lie from the wanted one, mm. */
export const clearanceToleranceOf = (settings: InspectionSettings, wanted: number): number =>
  settings.clearanceTolerance ?? wanted / 10;
