import { degrees, formatLength } from './units';

/**
 * A length in both units for a sentence: "0.012 mm (0.00047 in)". What the digits cannot show is said to be below
 * them, and inches that would all be zeros are left out; 0 stays 0.
 */
export function sayLength(mm: number): string {
  const finest = 1 / 10_000;
  if (mm > 0 && mm < finest) return `under ${formatLength(finest, 'mm')}`;
  const inch = formatLength(mm, 'inch');
  return mm > 0 && inch === formatLength(0, 'inch')
    ? formatLength(mm, 'mm')
    : `${formatLength(mm, 'mm')} (${inch})`;
}

/** The same for what may be negative, as where a plug presses: "−0.005 mm (−0.0002 in)". */
export const sayGap = (mm: number): string =>
  mm < 0 ? `−${sayLength(-mm).replace('(', '(−')}` : sayLength(mm);

/** An angle in degrees with up to two decimals, or as many as matter: "89.5°". */
export const sayAngle = (radians: number, decimals = 2): string =>
  `${Number(degrees(radians).toFixed(decimals))}°`;

/** Up to four significant digits, no trailing zeros. */
export const shortNumber = (value: number): string => String(Number(value.toPrecision(4)));

/** A force in kN and short tons-force: "18.3 kN (2.06 short tons)". */
export const sayForce = (newton: number): string =>
  `${shortForce(newton / 1000)} kN (${shortForce(newton / newtonPerShortTon)} short tons)`;

/** 2000 pounds-force. */
export const newtonPerShortTon = 2000 * 0.45359237 * 9.80665;

/** Three digits: no force of press work is known better. */
const shortForce = (value: number): string => String(Number(value.toPrecision(3)));
