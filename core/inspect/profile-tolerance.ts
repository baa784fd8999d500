/**
 * The tolerance of a profile of any line: a zone between the two lines that envelop circles of the width's diameter,
 * their centres on the true profile (ISO 1101, ISO 1660, ASME Y14.5). Equally disposed half of it lies outside the
 * material, half inside; unequally (ISO 1101 UZ, ASME Y14.5 the circled U) `outside` says how much lies outside.
 */
export interface ProfileTolerance {
  /** Whole width of the zone, mm. */
  readonly width: number;
  /** How much of it lies outside the material, mm; null half of it. May be negative or more than the width. */
  readonly outside: number | null;
}

/** Least and greatest deviation that the zone lets pass, mm. */
export function zoneLimits({ width, outside }: ProfileTolerance): {
  readonly low: number;
  readonly high: number;
} {
  const high = outside ?? width / 2;
  return { low: high - width, high };
}

/**
 * The tolerance as drawings state it: the bare width where it is equally disposed; else the width, U and what lies
 * outside the material (ASME Y14.5, U in a circle), and UZ with the shift of the zone's middle (ISO 1101).
 * `say` writes a length.
 */
export function sayTolerance(tolerance: ProfileTolerance, say: (mm: number) => string): string {
  if (tolerance.outside === null || zoneMiddle(tolerance) === 0)
    return `${say(tolerance.width)} (ISO 1101, ASME Y14.5)`;
  const shift = zoneMiddle(tolerance);
  const signed = `${shift > 0 ? '+' : ''}${say(shift)}`;
  return `${say(tolerance.width)} (U) ${say(tolerance.outside)} (ASME Y14.5), ${say(tolerance.width)} UZ ${signed} (ISO 1101)`;
}

/** The deviation in the middle of the zone, mm: 0 where it is equally disposed. */
export const zoneMiddle = (tolerance: ProfileTolerance): number => {
  const { low, high } = zoneLimits(tolerance);
  return (low + high) / 2;
};

/** The width of the narrowest zone, disposed like the tolerance's, that holds all deviations, mm. */
export function neededWidth(tolerance: ProfileTolerance, deviations: readonly number[]): number {
  const middle = zoneMiddle(tolerance);
  return 2 * deviations.reduce((most, d) => Math.max(most, Math.abs(d - middle)), 0);
}

/** A deviation that only rounding keeps from a limit passes. */
export function isWithin(tolerance: ProfileTolerance, deviation: number, slack: number): boolean {
  const { low, high } = zoneLimits(tolerance);
  return deviation >= low - slack && deviation <= high + slack;
}
