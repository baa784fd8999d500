/**
 * A least length, mm, that a rule of thumb gives, up to the next tenth: the rule knows no micrometres, and what is as
 * long as it says has to be enough. A thousandth of a tenth above one is rounding, and stays.
 */
export const upToTenth = (mm: number): number => Math.max(0, Math.ceil(10 * mm - 1 / 1000) / 10);

/** A greatest length, mm, down to the tenth below it, likewise. */
export const downToTenth = (mm: number): number => Math.max(0, Math.floor(10 * mm + 1 / 1000) / 10);
