import type { Region } from '../geometry/contour';
import { areaMoments } from '../geometry/area-moments';
import { commonPractice } from './sourced';

/** How the punch is held: its far end is always fast in the retainer. */
export const endConditions = ['free', 'guided', 'hinged'] as const;
export type EndCondition = (typeof endConditions)[number];

/** Effective length over free length (Euler's cases; any text on strength of materials). */
export const lengthFactor: Readonly<Record<EndCondition, number>> = {
  // Fast at one end, free at the other: a stripper that does not guide.
  free: 2,
  // Fast at one end, held sideways at the other: Euler's third case.
  guided: 0.7,
  // As if hinged at both ends.
  hinged: 1,
};

/** Young's modulus of hardened tool steel, MPa. */
export const punchModulus = commonPractice(210_000, 'common handbook value for tool steel');

export interface PunchQuery {
  readonly region: Region;
  /** Force on the punch, N. */
  readonly force: number;
  /** From the retainer to the tip, mm. */
  readonly freeLength: number;
  readonly end: EndCondition;
  /** Compressive stress the punch stands, MPa. */
  readonly permittedStress: number;
}

export interface PunchStrength {
  /** Compressive stress, MPa. */
  readonly stress: number;
  /** Effective length over the least radius of gyration. */
  readonly slenderness: number;
  /** Euler's load, N: π²·E·I / (K·L)². */
  readonly bucklingLoad: number;
  /** What the punch stands, N: Euler's load, and where it is stocky the permitted stress times its area. */
  readonly capacity: number;
  /** Which of the two it is. */
  readonly limit: 'buckling' | 'stress';
  /** Capacity over force. */
  readonly safety: number;
  /** The free length at which Euler's load would equal the force, mm. */
  readonly longestLength: number;
}

/**
 * Strength of a punch by Euler's formula with the least second moment of its section, and by stress where it is too
 * stocky to buckle. Null where there is no section. Check: a round punch hinged at both ends may be
 * (π·d/8)·√(E·d/(τ·t)) long, the formula of press tool handbooks.
 */
export function punchStrength(query: PunchQuery): PunchStrength | null {
  const moments = areaMoments(query.region);
  if (!moments || !(query.force > 0)) return null;
  const { area, least } = moments;
  const effective = lengthFactor[query.end] * query.freeLength;
  const bucklingLoad = (Math.PI ** 2 * punchModulus.value * least) / effective ** 2;
  const crushing = query.permittedStress * area;
  const capacity = Math.min(bucklingLoad, crushing);
  return {
    stress: query.force / area,
    slenderness: effective / Math.sqrt(least / area),
    bucklingLoad,
    capacity,
    limit: bucklingLoad < crushing ? 'buckling' : 'stress',
    safety: capacity / query.force,
    longestLength:
      (Math.PI * Math.sqrt((punchModulus.value * least) / query.force)) / lengthFactor[query.end],
  };
}
