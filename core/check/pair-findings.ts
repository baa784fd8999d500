import type { Finding } from '../finding';
import type { Contour } from '../geometry/contour';
import { contourBox } from '../geometry/contour-measures';
import { tolerance } from '../geometry/tolerance';
import type { Fit } from '../plan';
import { asCutRegion } from '../wire/as-cut';
import { findingOf } from './finding-of';
import { sayLength } from './say-length';
import { extent, unreachedPlaces } from './unreached-places';

export interface PairQuery {
  readonly contourId: string;
  readonly use: 'blank' | 'pierce';
  readonly drawn: Contour;
  readonly punchId: string;
  readonly dieId: string;
  readonly clearance: number;
  readonly reach: number;
  readonly cornersMatch: boolean;
  readonly fit: Fit | null;
}

/**
 * Whether punch and die fit as cut: the punch must not strike the fillets that the wire leaves in the die, and the
 * clearance must not fall below the wanted one.
 */
export function fitFindings(query: PairQuery): readonly Finding[] {
  const { fit, clearance, reach, contourId, punchId } = query;
  if (!fit || fit.least >= clearance - tolerance.uneven) return [];
  const radius = reach - clearance;
  const base = {
    place: { ...fit.leastAt, reach: Math.max(4 * reach, 20 * clearance) },
    contourId,
    memberId: punchId,
    numbers: [
      { label: 'least clearance', value: fit.least, kind: 'length' as const },
      { label: 'wanted clearance', value: clearance, kind: 'length' as const },
    ],
    cures:
      query.cornersMatch || radius <= 0
        ? [
            {
              kind: 'section' as const,
              say: 'Open the die here by sections, or change the contour of the punch.',
            },
          ]
        : [
            {
              kind: 'match-corners' as const,
              radius,
              say: `Round the punch's outside corners to ${sayLength(radius)}, so that the clearance stays even.`,
            },
          ],
  };
  if (fit.least <= clearance * strikeShare) {
    const strikes = fit.least <= 0;
    return [
      findingOf({
        ...base,
        code: 'corner-strikes',
        weight: 'stop',
        title: strikes ? 'The punch strikes the die as cut' : 'The punch all but touches the die as cut',
        message: strikes
          ? `Where the wire leaves stock in the die, the punch would run into it by ${sayLength(-fit.least)}.`
          : `Where the wire leaves stock in the die, only ${sayLength(fit.least)} of ${sayLength(clearance)} clearance is left.`,
      }),
    ];
  }
  return [
    findingOf({
      ...base,
      code: 'clearance-uneven',
      weight: 'decide',
      title: 'Clearance falls below the wanted one',
      message: `The least clearance as cut is ${sayLength(fit.least)} instead of ${sayLength(clearance)} per side.`,
    }),
  ];
}

/** A clearance of less than this share of the wanted one is lost to the machine's accuracy and play (common practice). */
const strikeShare = 0.25;

/**
 * A contour that the clearance swallows or splits, or a feature narrower than twice the clearance: the member that
 * takes the clearance would lose it.
 */
export function lostFeatures(query: PairQuery, designed: readonly Contour[]): readonly Finding[] {
  return designed.length === 1 ? lostNarrowFeatures(query) : [lostContour(query, designed)];
}

function lostNarrowFeatures({
  use,
  drawn,
  clearance,
  contourId,
  punchId,
  dieId,
}: PairQuery): readonly Finding[] {
  // A disc of the clearance rolls along the drawn contour, inside a blank and outside a hole.
  const role = use === 'blank' ? 'die' : 'punch';
  const reached = asCutRegion([drawn], role, clearance);
  return unreachedPlaces([drawn], reached, role, clearance)
    .filter(({ shape }) => shape.kind === 'slot')
    .map(({ shape, depth, outline }) =>
      findingOf({
        code: 'clearance-too-large',
        weight: 'stop',
        title: 'The clearance is larger than a feature',
        message: `A feature here is narrower than twice the clearance of ${sayLength(clearance)}: the ${use === 'blank' ? 'punch' : 'die'} loses ${sayLength(depth)} of it.`,
        place: { ...shape.at, reach: Math.max(extent(outline), 10 * clearance) },
        contourId,
        memberId: use === 'blank' ? punchId : dieId,
        numbers: [
          { label: 'clearance', value: clearance, kind: 'length' },
          { label: 'lost depth', value: depth, kind: 'length' },
        ],
        cures: [{ kind: 'other', say: 'Choose a smaller clearance, or leave this contour out.' }],
      }),
    );
}

function lostContour(query: PairQuery, designed: readonly Contour[]): Finding {
  const member = query.use === 'blank' ? 'punch' : 'die';
  const box = contourBox(query.drawn);
  return findingOf({
    code: 'clearance-too-large',
    weight: 'stop',
    title: 'The clearance is larger than a feature',
    message:
      designed.length === 0
        ? `With ${sayLength(query.clearance)} per side nothing is left of the ${member}.`
        : `With ${sayLength(query.clearance)} per side the ${member} falls into ${designed.length} parts: a neck is narrower than twice the clearance.`,
    place: {
      x: (box.minX + box.maxX) / 2,
      y: (box.minY + box.maxY) / 2,
      reach: Math.max(box.maxX - box.minX, box.maxY - box.minY) / 2,
    },
    contourId: query.contourId,
    memberId: query.use === 'blank' ? query.punchId : query.dieId,
    numbers: [{ label: 'clearance', value: query.clearance, kind: 'length' }],
    cures: [{ kind: 'other', say: 'Choose a smaller clearance, or leave this contour out.' }],
  });
}
