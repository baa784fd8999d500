import { degrees, formatLength } from './units';

/**
 * A length in both units for a sentence: "0.012 mm (0.00047 in)". What the digits cannot show is said to be below
 * them; 0 stays 0.
 */
export function sayLength(mm: number): string {
  const finest = 1 / 10_000;
  if (mm > 0 && mm < finest) return `under ${formatLength(finest, 'mm')}`;
  return `${formatLength(mm, 'mm')} (${formatLength(mm, 'inch')})`;
}

/** An angle in degrees with up to two decimals: "89.5°". */
export const sayAngle = (radians: number): string => `${Number(degrees(radians).toFixed(2))}°`;
