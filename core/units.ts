import { done, failed, type Result } from './problem';

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

export interface LengthReading {
  /** The unit of a bare number. */
  readonly unit: DisplayUnit;
  /** Stock thickness in mm, what a percentage is taken of; without it percentages are refused. */
  readonly thickness?: number;
}

/**
 * What a person typed, as mm. Reads a decimal point or comma, fractions and mixed numbers, and the units mm, cm,
 * µm, in, ″, mil and thou; a bare number is in `unit`. "10 %" and "10 % t" are a share of the stock thickness.
 * A comma is always a decimal comma: "1,250" is 1.25. The sign is kept; the caller sets the range.
 * Examples: "0.010in" → 0.254, "1/64 in" → 0.396875, "10 % t" at 1.5 mm → 0.15.
 */
export function parseLength(text: string, reading: LengthReading): Result<number> {
  const parts = /^([-+]?[\d.,/\s]+?)\s*([a-zµμ"″%]*(?:\s*t)?)\.?$/.exec(text.trim().toLowerCase());
  const number = parts?.[1] === undefined ? Number.NaN : readNumber(parts[1]);
  if (!Number.isFinite(number)) {
    return failed(
      'length-not-read',
      `"${text.trim()}" is not a length`,
      '',
      'Type a number with its unit, such as 0.25 mm, 0.010 in or 1/64 in.',
    );
  }
  const suffix = (parts?.[2] ?? '').replace(/\s+/g, '');
  if (suffix === '%' || suffix === '%t') return shareOf(number, reading.thickness);
  const unit = suffix === '' ? reading.unit : lengthSuffixes[suffix];
  if (unit === undefined) {
    return failed(
      'length-unit-unknown',
      `"${suffix}" is not a unit of length`,
      '',
      'Use mm, µm, in, mil or, where it fits, % of the thickness.',
    );
  }
  return done(number * drawingUnits[unit].mm);
}

/**
 * A length for the screen, with its unit: mm with up to 4 decimals (0.1 µm), inch with up to 5 (a quarter of a µm),
 * trailing zeros left out. 0.254 → "0.254 mm" or "0.01 in".
 */
export function formatLength(mm: number, unit: DisplayUnit): string {
  return `${formatLengthNumber(mm, unit)} ${unit === 'inch' ? 'in' : 'mm'}`;
}

/** The same without the unit. */
export function formatLengthNumber(mm: number, unit: DisplayUnit): string {
  const value = unit === 'inch' ? mm / mmPerInch : mm;
  const rounded = Number(value.toFixed(unit === 'inch' ? 5 : 4));
  return String(rounded === 0 ? 0 : rounded);
}

const lengthSuffixes: Readonly<Record<string, DrawingUnit>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  µm: 'micron',
  μm: 'micron',
  um: 'micron',
  in: 'inch',
  inch: 'inch',
  inches: 'inch',
  '"': 'inch',
  '″': 'inch',
  mil: 'mil',
  mils: 'mil',
  thou: 'mil',
};

function shareOf(percent: number, thickness: number | undefined): Result<number> {
  if (thickness === undefined) {
    return failed(
      'length-no-thickness',
      'A percentage of the thickness has no meaning here',
      '',
      'Type a length in mm or inch.',
    );
  }
  return done((percent / 100) * thickness);
}

/** "1 1/64", "1/64", "0,25", ".5" as a number; NaN for anything else, 1/0 included. */
function readNumber(text: string): number {
  const fraction = /^([-+]?)(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/.exec(text);
  if (fraction) {
    const [, sign, whole, over, under] = fraction;
    const size = Number(whole ?? 0) + Number(over) / Number(under);
    return sign === '-' ? -size : size;
  }
  return /^[-+]?(\d+[.,]?\d*|[.,]\d+)$/.test(text) ? Number(text.replace(',', '.')) : Number.NaN;
}
