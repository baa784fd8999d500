import type { ProgramStyle } from './program-style';
import { mmPerInch, type DisplayUnit } from './units';
import * as portable from './geometry/portable-math';

/** Decimals that a style writes coordinates with, in a unit. */
export const decimalsOf = ({ numbers }: Pick<ProgramStyle, 'numbers'>, unit: DisplayUnit): number =>
  unit === 'inch' ? numbers.inchDecimals : numbers.mmDecimals;

/** The last decimal of a style's coordinates in mm: 0.0001 mm of 4 decimals, 0.000254 mm of 5 in inch. */
export const lastDecimal = (style: Pick<ProgramStyle, 'numbers'>, unit: DisplayUnit): number =>
  (unit === 'inch' ? mmPerInch : 1) / portable.powerOfTen(decimalsOf(style, unit));
