import { tolerance } from '../geometry/tolerance';

/**
 * Which deviations stand apart from the rest: those whose modified z-score 0.6745·|d − median| / MAD is above 3.5
 * (Iglewicz & Hoaglin, How to Detect and Handle Outliers, ASQC 1993), MAD being the median of |d − median|. Unlike the
 * standard deviation neither median is moved by the outliers themselves. Deviations that all but agree are not parted
 * by less than measuring can tell (`measuringNoise`).
 */
export function outliersAmong(deviations: readonly number[]): readonly boolean[] {
  const middle = median(deviations);
  const spread = median(deviations.map((d) => Math.abs(d - middle)));
  const scale = Math.max(spread, tolerance.measuringNoise);
  return deviations.map((d) => (normalShare * Math.abs(d - middle)) / scale > mostScore);
}

/** The MAD of a normal distribution is this share of its standard deviation. */
const normalShare = 0.6745;
const mostScore = 3.5;

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] ?? 0)) / 2;
}
