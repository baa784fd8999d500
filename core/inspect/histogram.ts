import * as portable from '../geometry/portable-math';

/** How many values lie in each of some even steps. */
export interface Histogram {
  /** Where the first step begins, and how wide each is. */
  readonly from: number;
  readonly step: number;
  readonly counts: readonly number[];
}

/**
 * Values counted in even steps: the round step (1, 2 or 5 times a power of ten) nearest above twice the range of their middle half over the
 * cube root of their number (Freedman & Diaconis, 1981), so that outliers don't widen it; at most forty steps. A value
 * on the border of two steps counts to the upper one. Empty for no values.
 */
export function histogram(values: readonly number[]): Histogram {
  if (values.length === 0) return { from: 0, step: 1, counts: [] };
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] as number;
  const [least, greatest] = [at(0), at(1)];
  const middle = (2 * (at(0.75) - at(0.25))) / portable.cbrt(values.length);
  const step = roundStep(Math.max(middle, (greatest - least) / mostSteps) || Math.abs(greatest) || 1);
  const first = Math.floor(least / step);
  const counts = Array.from({ length: Math.floor(greatest / step) - first + 1 }, () => 0);
  for (const value of values) {
    const k = Math.min(counts.length - 1, Math.floor(value / step) - first);
    counts[k] = (counts[k] ?? 0) + 1;
  }
  return { from: first * step, step, counts };
}

const mostSteps = 40;

/** The least of 1, 2 and 5 times a power of ten that is no less. */
function roundStep(least: number): number {
  const power = portable.powerOfTen(portable.decadeOf(least));
  return power * ([1, 2, 5].find((factor) => factor * power >= least) ?? 10);
}
