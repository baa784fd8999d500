/** Nominal sizes up to and including `upTo`, mm (ISO 286-1, steps of nominal size up to 500 mm). */
export interface SizeStep {
  readonly over: number;
  readonly upTo: number;
}

/** IT grades that the table has. */
export const toleranceGrades = [4, 5, 6, 7, 8, 9, 10, 11] as const;
export type ToleranceGrade = (typeof toleranceGrades)[number];

/**
 * Standard tolerance of a grade at a nominal size, mm (ISO 286-1:2010, table 1); null for sizes outside 0 to 500 mm.
 * Example: IT7 at 30 mm is 0.021 mm.
 */
export function standardTolerance(grade: ToleranceGrade, nominal: number): number | null {
  const row = rowAt(standardTolerances, nominal);
  return row ? (row.microns[toleranceGrades.indexOf(grade)] ?? 0) / 1000 : null;
}

/** The row of a table of size steps that a nominal size falls into. */
export function rowAt<R extends SizeStep>(rows: readonly R[], nominal: number): R | null {
  return rows.find(({ over, upTo }) => nominal > over && nominal <= upTo) ?? null;
}

interface ToleranceRow extends SizeStep {
  /** By grade, IT4 first. */
  readonly microns: readonly number[];
}

const row = (over: number, upTo: number, ...microns: readonly number[]): ToleranceRow => ({
  over,
  upTo,
  microns,
});

/** ISO 286-1:2010, table 1, IT4 to IT11, µm. */
export const standardTolerances: readonly ToleranceRow[] = [
  row(0, 3, 3, 4, 6, 10, 14, 25, 40, 60),
  row(3, 6, 4, 5, 8, 12, 18, 30, 48, 75),
  row(6, 10, 4, 6, 9, 15, 22, 36, 58, 90),
  row(10, 18, 5, 8, 11, 18, 27, 43, 70, 110),
  row(18, 30, 6, 9, 13, 21, 33, 52, 84, 130),
  row(30, 50, 7, 11, 16, 25, 39, 62, 100, 160),
  row(50, 80, 8, 13, 19, 30, 46, 74, 120, 190),
  row(80, 120, 10, 15, 22, 35, 54, 87, 140, 220),
  row(120, 180, 12, 18, 25, 40, 63, 100, 160, 250),
  row(180, 250, 14, 20, 29, 46, 72, 115, 185, 290),
  row(250, 315, 16, 23, 32, 52, 81, 130, 210, 320),
  row(315, 400, 18, 25, 36, 57, 89, 140, 230, 360),
  row(400, 500, 20, 27, 40, 63, 97, 155, 250, 400),
];
