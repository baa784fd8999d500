import type { DrawingUnit } from '../../core/units';

/** A drawing unit as a person reads it. */
export const unitName = (unit: DrawingUnit): string => names[unit] ?? unit;

const names: Partial<Record<DrawingUnit, string>> = {
  mm: 'Millimetres',
  inch: 'Inches',
  mil: 'Thousandths of an inch',
  cm: 'Centimetres',
  m: 'Metres',
  foot: 'Feet',
  micron: 'Micrometres',
};
