import { tolerance } from '../geometry/tolerance';

/**
 * How deep a program may cut into a member in its proof, mm: the accuracy of the proof, and what rounding to the
 * program's last decimal explains. A style of 3 decimals can't say a path more exactly than that.
 */
export const allowedGouge = (lastDecimal: number): number => tolerance.proofGouge + roundedPath * lastDecimal;

/** In last decimals: an end is off by √2 / 2, the way of an arc between rounded ends and centre by twice that. */
const roundedPath = 1.5;
