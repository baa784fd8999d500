import * as portable from '../geometry/portable-math';
import { mmPerInch, type DisplayUnit } from '../units';

/** A feed in whole steps of its last decimal, at least one: a feed that rounds to nothing would stand still. */
export const feedSteps = (mmPerMinute: number, unit: DisplayUnit, decimals: number): number =>
  Math.max(1, Math.round((mmPerMinute / (unit === 'inch' ? mmPerInch : 1)) * portable.powerOfTen(decimals)));
