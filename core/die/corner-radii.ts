import type { Contour, Point } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import type { MemberRole, Use } from '../plan';
import { cornerPlaces, type CornerPlace } from './corner-places';
import type { CornerException, CornerPath, CornerRule, CornerRules } from './corner-rules';
import { memberSizes } from './member-sizes';
import * as portable from '../geometry/portable-math';

/** What the rules make of one kind of corner, or of one corner of the drawing. */
export interface CornerRadii {
  /** The member that has the corner as an inside one; it is an outside corner of the other. */
  readonly insideMember: MemberRole;
  /** Rounding of the drawn contour that each member is made from, mm; the drawn radius where it stays as drawn. */
  readonly drawingRadius: Readonly<Record<MemberRole, number>>;
  /** By what a member's radius is larger than its drawing radius, mm: its contour is a parallel of the drawing's. */
  readonly shift: Readonly<Record<MemberRole, number>>;
}

export interface PairCorner extends CornerRadii {
  readonly place: CornerPlace;
  readonly path: CornerPath;
  /** The person's own choice for this corner; null where it follows the rules for all. */
  readonly exception: CornerException | null;
}

export interface PairCorners {
  readonly corners: readonly PairCorner[];
  /** For what bends as tightly as a corner but is none, such as the tip of an ellipse. */
  readonly elsewhere: Readonly<Record<CornerPlace['kind'], CornerRadii>>;
}

export interface CornerQuery {
  readonly contourId: string;
  readonly drawn: Contour;
  readonly use: Use;
  readonly clearance: number;
  /** Smallest inside radius the wire can cut in each member, mm. */
  readonly reach: Readonly<Record<MemberRole, number>>;
  readonly rules: CornerRules;
  /** By how much `drawn` was made larger on each side before, mm: its corners lie that much off the drawing's. */
  readonly sizeShift: number;
}

/**
 * The corners of a drawn contour under the job's rules. Both members are parallels of one outline, so a corner rounded
 * by g in the drawing has radius g + shift in each member, and two members made from the same rounding are concentric
 * there: that is how corners match. The inside corner counts as the wire leaves it. Where both are to match each
 * other, they follow the fillet that the wire leaves.
 *
 * Example: blank, reach 0.150, clearance 0.075: the die's corner as drawn keeps a fillet of 0.150, the matching punch
 * corner has 0.150 − 0.075 = 0.075.
 */
export function pairCorners(query: CornerQuery): PairCorners {
  const { rules, contourId, drawn, sizeShift } = query;
  const places = cornerPlaces(drawn);
  const own = rules.exceptions.filter((exception) => exception.contourId === contourId);
  const exceptions = new Map(own.map((exception) => [cornerNear(places, exception, sizeShift), exception]));
  return {
    corners: places.map((place) => {
      const exception = exceptions.get(place) ?? null;
      const path = exception?.path ?? rules.path;
      return { place, path, exception, ...radiiOf(query, place, exception) };
    }),
    elsewhere: {
      convex: radiiOf(query, { kind: 'convex', drawnRadius: 0 }, null),
      reflex: radiiOf(query, { kind: 'reflex', drawnRadius: 0 }, null),
    },
  };
}

/** The corner that a stored place means: the nearest one, null where none is near enough. */
export function cornerNear(
  places: readonly CornerPlace[],
  { x, y }: Point,
  sizeShift = 0,
): CornerPlace | null {
  let nearest: CornerPlace | null = null;
  let least = Infinity;
  for (const place of places) {
    const distance = Math.hypot(place.at.x - x, place.at.y - y);
    // A size shift moves a sharp corner along its bisector, by less than this.
    const room = tolerance.cornerPlace + Math.abs(sizeShift) / portable.sin(place.angle / 2);
    if (distance > room || distance >= least) continue;
    least = distance;
    nearest = place;
  }
  return nearest;
}

function radiiOf(
  query: CornerQuery,
  { kind, drawnRadius }: Pick<CornerPlace, 'kind' | 'drawnRadius'>,
  exception: CornerException | null,
): CornerRadii {
  const inside: MemberRole = kind === 'convex' ? 'die' : 'punch';
  const outside: MemberRole = inside === 'die' ? 'punch' : 'die';
  const shift = shiftsOf(query, kind);
  const insideRule = exception?.inside ?? query.rules[inside].inside;
  const outsideRule = exception?.outside ?? query.rules[outside].outside;
  const own = (wanted: CornerRule, role: MemberRole): number =>
    wanted.rule === 'radius' ? Math.max(drawnRadius, wanted.radius - shift[role]) : drawnRadius;
  const followsOutside = insideRule.rule === 'match' && outsideRule.rule !== 'match';
  const ofInside = followsOutside ? own(outsideRule, outside) : own(insideRule, inside);
  const asCut = Math.max(ofInside, query.reach[inside] - shift[inside]);
  const ofOutside = outsideRule.rule === 'match' ? asCut : own(outsideRule, outside);
  return {
    insideMember: inside,
    drawingRadius:
      inside === 'die' ? { die: ofInside, punch: ofOutside } : { die: ofOutside, punch: ofInside },
    shift,
  };
}

/** A parallel outside a contour makes its convex radii larger and its reflex ones smaller. */
function shiftsOf({ use, clearance }: CornerQuery, kind: CornerPlace['kind']): CornerRadii['shift'] {
  const { dieOffset, punchOffset } = memberSizes(use, clearance);
  const sign = kind === 'convex' ? 1 : -1;
  // No negative zero: it would be seen in a finding's number.
  return { die: sign * dieOffset || 0, punch: sign * punchOffset || 0 };
}
