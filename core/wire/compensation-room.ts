import { tolerance } from '../geometry/tolerance';

/**
 * How much rounder than the wire a contour is made for a control that offsets by itself, mm: controls refuse an inside
 * arc that is not larger than the offset. It follows the program's last decimal, since an arc may come out smaller by
 * rounding: 0.0025 mm of 3 decimals, else what `compensationRoom` says.
 */
export const compensationRoom = (lastDecimal: number): number =>
  Math.max(tolerance.compensationRoom, smallerByRounding * lastDecimal);

/** In last decimals: a chord of an arc of up to a half turn is off by √2, its centre by as much (round-arc.ts). */
const smallerByRounding = 2.5;
