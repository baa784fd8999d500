import { tolerance } from '../geometry/tolerance';
import type { MemberRole } from '../plan';
import type { PairCorner } from './corner-radii';
import * as portable from '../geometry/portable-math';

/** How punch and die fit at one corner as cut, and what would make the clearance even there. mm. */
export interface CornerFit {
  readonly outsideMember: MemberRole;
  /** Radius of the inside corner as the wire leaves it, and of the outside corner; 0 sharp. */
  readonly insideRadius: number;
  readonly outsideRadius: number;
  /** The clearance along the bisector; the least at the corner where it is less than all along the edges. */
  readonly across: number;
  /** Radii that would make the clearance even: of the outside corner, of the inside one; null where it is or cannot be. */
  readonly matching: { readonly outside: number | null; readonly inside: number | null };
}

/**
 * The corners of both members lie clearance / sin(angle / 2) apart; a radius r takes each r (1 / sin(angle / 2) − 1)
 * back from its own. Across the corner that leaves c / s − (inside − outside radius) (1 / s − 1), which is c where the
 * radii differ by c: then they are concentric.
 * Example: 90°, c 0.075, die fillet 0.150, sharp punch: 0.075·√2 − 0.150·(√2 − 1) = 0.0439.
 */
export function cornerFit(
  { place, insideMember, drawingRadius, shift }: PairCorner,
  clearance: number,
  reach: Readonly<Record<MemberRole, number>>,
): CornerFit {
  const outsideMember = insideMember === 'die' ? 'punch' : 'die';
  const insideRadius = Math.max(drawingRadius[insideMember] + shift[insideMember], reach[insideMember]);
  const outsideRadius = Math.max(0, drawingRadius[outsideMember] + shift[outsideMember]);
  const stretch = 1 / portable.sin(place.angle / 2);
  const outside = Math.max(0, insideRadius - clearance);
  const inside = Math.max(reach[insideMember], outsideRadius + clearance);
  const differs = (wanted: number, is: number) => Math.abs(wanted - is) > tolerance.samePoint;
  return {
    outsideMember,
    insideRadius,
    outsideRadius,
    across: clearance * stretch - (insideRadius - outsideRadius) * (stretch - 1),
    matching: {
      outside: differs(outside, outsideRadius) ? outside : null,
      inside: differs(inside, insideRadius) ? inside : null,
    },
  };
}
