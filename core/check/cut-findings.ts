import type { Finding } from '../finding';
import type { Contour, Point } from '../geometry/contour';
import { contourBox, contourLength } from '../geometry/contour-measures';
import type { PlannedCut } from '../wire/plan-cuts';
import type { LeadWishes } from '../wire/place-lead';
import { findingOf } from '../finding-of';
import { sayLength } from '../say';

export interface CutQuery {
  readonly memberId: string;
  readonly contourId: string;
  readonly role: 'die' | 'punch';
  readonly designed: readonly Contour[];
  readonly cuts: readonly PlannedCut[];
  readonly reach: number;
  readonly wishes: LeadWishes;
}

/** What is wrong with the way a member is cut: the wire does not go in, a pass breaks up, hole, lead-in or tab do not fit. */
export function cutFindings(query: CutQuery): readonly Finding[] {
  const { cuts, designed } = query;
  if (designed.length > 0 && cuts.length === 0) return [wireTooWide(query)];
  return cuts.flatMap((planned) => [
    ...brokenPasses(query, planned),
    ...holeFinding(query, planned),
    ...leadFinding(query, planned),
    ...tabFinding(query, planned),
  ]);
}

function wireTooWide({ designed, memberId, contourId, reach }: CutQuery): Finding {
  const box = contourBox(designed[0] as Contour);
  return findingOf({
    code: 'wire-too-wide',
    weight: 'stop',
    title: 'The wire is wider than the opening',
    message: `The wire cuts ${sayLength(2 * reach)} wide and does not go into this opening anywhere.`,
    place: {
      x: (box.minX + box.maxX) / 2,
      y: (box.minY + box.maxY) / 2,
      reach: Math.max(box.maxX - box.minX, box.maxY - box.minY),
    },
    memberId,
    contourId,
    numbers: [{ label: 'kerf', value: 2 * reach, kind: 'length' }],
    cures: [
      { kind: 'other', say: 'Choose a thinner wire, or leave this contour out and make it another way.' },
    ],
  });
}

function brokenPasses(
  { memberId, contourId }: CutQuery,
  { brokenPasses: passes, lead, cut }: PlannedCut,
): readonly Finding[] {
  return passes.map((pass) => {
    const goesIn = cut.passes.some((path) => path.pass === pass);
    return findingOf({
      code: 'slot',
      weight: 'stop',
      title: goesIn ? `Pass ${pass + 1} does not get through a neck` : `Pass ${pass + 1} does not go in`,
      message: `With the stock it leaves, pass ${pass + 1} ${goesIn ? 'breaks up in a neck' : 'has no room in an opening'} that the finishing pass goes through, and the finishing pass would meet uncut stock there.`,
      place: placeAt(lead.begin),
      memberId,
      contourId,
      numbers: [{ label: 'pass', value: pass + 1, kind: 'count' }],
      cures: [{ kind: 'other', say: 'Lower the stock left by this pass, or choose a thinner wire.' }],
    });
  });
}

function holeFinding({ memberId, contourId, wishes }: CutQuery, { lead }: PlannedCut): readonly Finding[] {
  const wanted = { label: 'wanted diameter', value: wishes.holeDiameter, kind: 'length' } as const;
  const { start } = lead;
  if (!start) {
    return [
      findingOf({
        code: 'start-hole',
        weight: 'stop',
        title: 'No start hole fits',
        message: `Not even the smallest start hole keeps ${sayLength(wishes.holeClearance)} from the path here.`,
        place: placeAt(lead.begin),
        memberId,
        contourId,
        numbers: [wanted],
        cures: [
          {
            kind: 'other',
            say: 'Lower the clearance from hole to path, or start from another place by hand.',
          },
        ],
      }),
    ];
  }
  if (start.diameter >= wishes.holeDiameter) return [];
  return [
    findingOf({
      code: 'start-hole',
      weight: 'decide',
      title: `Start hole of ${sayLength(start.diameter)} instead of ${sayLength(wishes.holeDiameter)}`,
      message: `The wanted start hole does not fit into the waste here; ${sayLength(start.diameter)} does, with ${sayLength(wishes.holeClearance)} to the path.`,
      place: placeAt(start),
      memberId,
      contourId,
      numbers: [wanted, { label: 'used diameter', value: start.diameter, kind: 'length' }],
      cures: [{ kind: 'other', say: 'Accept the smaller hole, or lower the clearance from hole to path.' }],
    }),
  ];
}

function leadFinding({ memberId, contourId, wishes }: CutQuery, { lead }: PlannedCut): readonly Finding[] {
  if (!lead.start) return [];
  const length = Math.hypot(lead.start.x - lead.begin.x, lead.start.y - lead.begin.y);
  if (length >= wishes.length * almost) return [];
  return [
    findingOf({
      code: 'lead-in',
      weight: 'note',
      title: 'Lead-in shorter than wanted',
      message: `There is room for a straight lead-in of ${sayLength(length)} here, not for ${sayLength(wishes.length)}.`,
      place: placeAt(lead.start),
      memberId,
      contourId,
      numbers: [{ label: 'length', value: length, kind: 'length' }],
    }),
  ];
}

/** Lengths are compared with a hair's room for rounding. */
const almost = 0.999;

function tabFinding(
  { memberId, contourId, wishes }: CutQuery,
  { lead, cut }: PlannedCut,
): readonly Finding[] {
  if (lead.tabLength >= wishes.tabLength) return [];
  const whole = contourLength(cut.passes[0]?.loop ?? []);
  return [
    findingOf({
      code: 'tab',
      weight: 'note',
      title: 'Tab shorter than wanted',
      message: `A tab of ${sayLength(wishes.tabLength)} is too long for a contour of ${sayLength(whole)}; it is ${sayLength(lead.tabLength)}.`,
      place: placeAt(lead.begin),
      memberId,
      contourId,
      numbers: [{ label: 'tab', value: lead.tabLength, kind: 'length' }],
    }),
  ];
}

const placeAt = ({ x, y }: Point) => ({ x, y, reach: 5 });
