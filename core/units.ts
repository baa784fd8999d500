/** Units at the edges: inside everything is mm and radians. */

export type DisplayUnit = 'mm' | 'inch';

export const mmPerInch = 25.4;

/** Drawing units by `$INSUNITS` code, mm per unit (DXF reference, HEADER section, $INSUNITS). */
export const drawingUnits = {
  inch: { code: 1, mm: 25.4 },
  foot: { code: 2, mm: 304.8 },
  mile: { code: 3, mm: 1_609_344 },
  mm: { code: 4, mm: 1 },
  cm: { code: 5, mm: 10 },
  m: { code: 6, mm: 1000 },
  km: { code: 7, mm: 1_000_000 },
  microinch: { code: 8, mm: 25.4e-6 },
  mil: { code: 9, mm: 0.0254 },
  yard: { code: 10, mm: 914.4 },
  angstrom: { code: 11, mm: 1e-7 },
  nm: { code: 12, mm: 1e-6 },
  micron: { code: 13, mm: 1e-3 },
  dm: { code: 14, mm: 100 },
  dam: { code: 15, mm: 10_000 },
  hm: { code: 16, mm: 100_000 },
} as const;

export type DrawingUnit = keyof typeof drawingUnits;

export const degrees = (radians: number): number => (radians * 180) / Math.PI;
export const radians = (degree: number): number => (degree * Math.PI) / 180;
