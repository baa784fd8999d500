import { degrees, formatLength } from '../units';

/** A length in both units, as findings say it: "0.0621 mm (0.00245 in)". */
export const sayLength = (mm: number): string => `${formatLength(mm, 'mm')} (${formatLength(mm, 'inch')})`;

/** An angle in degrees with up to two decimals: "89.5°". */
export const sayAngle = (radians: number): string => `${Number(degrees(radians).toFixed(2))}°`;
