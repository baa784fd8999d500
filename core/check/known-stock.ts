import type { Member } from '../plan';
import { asCutRegion } from '../wire/as-cut';
import { unreachedPlaces } from './unreached-places';

/**
 * Deepest stock, mm, that a proof may find since it is known: what the findings speak of, what the chords of a leaning
 * wire leave in the program's plane, and, where a control offsets by itself, what it leaves in corners for being told
 * of a contour that is `rounder` than the wire would make it.
 */
export function knownStock(
  { designed, role, remainders, relief }: Omit<Member, 'proof'>,
  reach: number,
  rounder: number,
): number {
  const ofChords = relief?.kind === 'one tapered cut' ? (relief.planes[0]?.remainder ?? 0) : 0;
  const radius = reach + rounder;
  const told =
    rounder > 0 ? unreachedPlaces(designed, asCutRegion(designed, role, radius), role, radius) : [];
  return [...remainders, ...told].reduce((depth, place) => Math.max(depth, place.depth), ofChords);
}
