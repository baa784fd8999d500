/** A spring as its maker states it. */
export interface SpringData {
  /** N/mm. */
  readonly rate: number;
  /** Longest deflection in service, mm. */
  readonly longestDeflection: number;
}

/** Springs that give a force before the work begins and still have room for the working travel. */
export interface SpringSet {
  readonly count: number;
  /** Deflection of each when the tool is open, mm. */
  readonly preload: number;
  /** All springs together, N: when the tool is open, and at the bottom of the stroke. */
  readonly openForce: number;
  readonly closedForce: number;
  /** Deflection of each at the bottom, mm, and by how much it exceeds what the spring stands (0: it does not). */
  readonly deflection: number;
  readonly overrun: number;
}

/**
 * The fewest springs that hold `force` (N) when the tool is open and still deflect by `travel` (mm) more, or the given
 * number of them. Preload is then just what gives the force: force / (number · rate). Where the travel alone is more
 * than a spring stands no number helps: one spring with its overrun. Hooke's law; the rate is taken as constant.
 */
export function springSet(
  force: number,
  travel: number,
  spring: SpringData,
  wantedCount: number | null = null,
): SpringSet {
  const room = spring.longestDeflection - travel;
  const needed = room > 0 ? Math.ceil(force / (spring.rate * room) - slack) : 1;
  const count = wantedCount ?? Math.max(1, needed);
  const preload = force / (count * spring.rate);
  const deflection = preload + travel;
  return {
    count,
    preload,
    openForce: count * spring.rate * preload,
    closedForce: count * spring.rate * deflection,
    deflection,
    overrun: Math.max(0, deflection - spring.longestDeflection * (1 + slack)),
  };
}

/** A quotient that is a whole number but for rounding asks for no further spring. */
const slack = 1 / 1_000_000_000;
