import type { Machine } from './technology';

/** "9.7 min" below ten minutes, "42 min", "3 h 05 min". */
export function sayMinutes(minutes: number): string {
  if (minutes < 9.95) return `${Number(minutes.toFixed(1))} min`;
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')} min`;
}

/** Wire by the metre and by the foot: "77.6 m (255 ft)". */
export const sayWire = (metres: number): string => `${digits(metres)} m (${digits(metres / 0.3048)} ft)`;

/** "18.40 EUR". */
export const sayPrice = (price: number, { currency }: NonNullable<Machine['hourlyPrice']>): string =>
  `${price.toFixed(2)} ${currency}`.trim();

/** Three digits or whole metres: no estimate of wire is better. */
const digits = (value: number): string =>
  String(value < 100 ? Number(value.toPrecision(3)) : Math.round(value));
