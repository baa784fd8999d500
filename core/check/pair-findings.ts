import type { PairCorner } from '../die/corner-radii';
import type { Cure, Finding } from '../finding';
import type { Contour, Region } from '../geometry/contour';
import { indexOf } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import type { Member, MemberRole, Pair } from '../plan';
import { findingOf } from '../finding-of';
import { sayGap, sayLength } from '../say';
import { insideCornerAt } from './corner-at';
import { stockGap, type StockGap } from './stock-gap';
import { extent } from './unreached-places';

export interface FitQuery {
  readonly pair: Pair;
  readonly clearance: number;
  /** Smallest inside radius in each member. */
  readonly reach: Readonly<Record<MemberRole, number>>;
  /** Of the drawing's contour. */
  readonly corners: readonly PairCorner[];
}

interface Narrowing {
  readonly fit: StockGap;
  readonly member: Member;
  readonly outline: Contour;
}

/**
 * Whether punch and die fit as cut. Clearance is lost only where the wire leaves stock, so every remainder is measured
 * against the other member: where they would collide or all but touch, each place is a stop; the places where some
 * clearance is left are one finding with the worst of them.
 */
export function fitFindings(query: FitQuery): readonly Finding[] {
  const { pair, clearance } = query;
  const narrow = [...narrowings(pair.die, pair.punch.asCut), ...narrowings(pair.punch, pair.die.asCut)]
    .filter(({ fit }) => fit.least < clearance - tolerance.uneven)
    .sort((a, b) => a.fit.least - b.fit.least);
  // A press fit overlaps on purpose: where it overlaps more, a person decides.
  const isStrike = ({ fit }: Narrowing) => clearance > 0 && fit.least <= clearance * strikeShare;
  const strikes = narrow.filter(isStrike);
  const [worst, ...others] = narrow.filter((place) => !isStrike(place));
  return [
    ...strikes.map((place) => strike(query, place)),
    ...(worst ? [uneven(query, worst, others.length)] : []),
  ];
}

/** A clearance of less than this share of the wanted one is lost to the machine's accuracy and play (common practice). */
const strikeShare = 0.25;

/** What the two are called. */
const wordsOf = ({ use }: Pair): Readonly<Record<MemberRole, string>> =>
  use === 'mate' ? { die: 'hole', punch: 'plug' } : { die: 'die', punch: 'punch' };

/** The gap between each remainder's stock and the other member. */
function narrowings(member: Member, other: Region): readonly Narrowing[] {
  const index = indexOf(tableOfRegion(other));
  if (index.table.count === 0) return [];
  // The stock left is solid: it must stay outside a punch, and inside a die's opening.
  const free = member.role === 'die' ? 'outside' : 'inside';
  return member.remainders.map(({ outline }) => ({ fit: stockGap(outline, index, free), member, outline }));
}

function strike(query: FitQuery, { fit, member, outline }: Narrowing): Finding {
  const { clearance, pair } = query;
  const words = wordsOf(pair);
  const { die, punch } = words;
  const overlap = fit.least < -tolerance.remainder ? -fit.least : 0;
  return findingOf({
    code: 'corner-strikes',
    weight: 'stop',
    title:
      overlap > 0
        ? `The ${punch} strikes the ${die} as cut`
        : `The ${punch} all but touches the ${die} as cut`,
    message:
      overlap > 0
        ? `Where the wire leaves stock in the ${words[member.role]}, ${punch} and ${die} would overlap by ${sayLength(overlap)}.`
        : `Where the wire leaves stock in the ${words[member.role]}, only ${sayLength(Math.max(0, fit.least))} of ${sayLength(clearance)} clearance is left.`,
    ...placing(query, { fit, member, outline }),
    cures: cures(query, { fit, member, outline }),
  });
}

function uneven(query: FitQuery, worst: Narrowing, others: number): Finding {
  const elsewhere =
    others > 0 ? ` ${others} more ${others === 1 ? 'place is' : 'places are'} below it too.` : '';
  return findingOf({
    code: 'clearance-uneven',
    weight: 'decide',
    title:
      query.pair.use === 'mate' ? 'The fit is tighter than wanted' : 'Clearance falls below the wanted one',
    message: `The least clearance as cut is ${sayGap(worst.fit.least)} instead of ${sayGap(query.clearance)} per side.${elsewhere}`,
    ...placing(query, worst),
    cures: cures(query, worst),
  });
}

function placing({ pair, clearance, reach }: FitQuery, { fit, member, outline }: Narrowing) {
  return {
    place: { ...fit.leastAt, reach: Math.max(4 * reach[member.role], 20 * clearance, extent(outline)) },
    contourId: pair.contourId,
    memberId: member.id,
    numbers: [
      { label: 'least clearance', value: fit.least, kind: 'length' as const },
      { label: 'wanted clearance', value: clearance, kind: 'length' as const },
    ],
  };
}

function cures({ pair, reach, clearance, corners }: FitQuery, place: Narrowing): readonly Cure[] {
  const { role } = place.member;
  const radius = reach[role] - clearance;
  const other = role === 'die' ? 'punch' : 'die';
  const words = wordsOf(pair);
  const section = {
    kind: 'section',
    say: `Open the ${words[role]} here by sections, or change the contour of the ${words[other]}.`,
  } as const;
  const corner = insideCornerAt(corners, role, place.fit.leastAt, extent(place.outline));
  const isRounded = corner !== null && corner.drawingRadius[other] + corner.shift[role] >= reach[role];
  if (radius <= 0 || isRounded) return [section];
  const givesSize = pair.use === 'pierce' ? 'punch' : 'die';
  const priced = other === givesSize ? ' The part gets that radius: agree it with the customer.' : '';
  const { contourId } = pair;
  return [
    ...(corner
      ? [
          {
            kind: 'corner',
            contourId,
            at: corner.place.at,
            side: 'outside',
            rule: { rule: 'match' },
            say: `Round the ${words[other]} at this corner to ${sayLength(radius)}, so that the clearance stays even.${priced}`,
          } as const,
        ]
      : []),
    {
      kind: 'match-corners',
      member: other,
      radius,
      say: `Round all outside corners of the ${words[other]} to match, here to ${sayLength(radius)}.${priced}`,
    },
    section,
  ];
}
