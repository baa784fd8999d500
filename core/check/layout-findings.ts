import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { Point } from '../geometry/contour';
import { chainLength } from '../geometry/contour-measures';
import type { StartHole } from '../plan';
import { sayLength } from '../say';
import type { LayoutTrouble } from '../wire/cut-layout';
import type { CutWishes } from '../wire/cut-wishes';
import type { PlannedCut } from '../wire/plan-cuts';

export interface LayoutQuery {
  readonly memberId: string;
  readonly contourId: string;
  readonly wishes: CutWishes;
}

/** What has to be said of a cut's start holes, lead-ins and tabs: what does not fit, and what was chosen and cannot be. */
export function layoutFindings(query: LayoutQuery, planned: PlannedCut): readonly Finding[] {
  const { layout, choice } = planned;
  return [
    ...layout.troubles.map((trouble) => chosenFinding(query, trouble)),
    ...layout.stretches.flatMap(({ start, begin }, i) => {
      const chosen = choice.stretches[i];
      if (!start) return [noStart(query, begin.at, planned.cut.waste)];
      return [
        ...startFindings(query, start, chosen?.holeDiameter ?? query.wishes.holeDiameter),
        ...(chosen?.hole ? [] : leadFinding(query, start, leadLength(planned, i))),
      ];
    }),
    ...tabFindings(query, planned),
  ];
}

const chosenTitles: Readonly<Record<LayoutTrouble['kind'], string>> = {
  hole: 'The chosen start hole is not allowed',
  place: 'The chosen place of a tab is not allowed',
  edge: 'No start from the edge of the block',
};

function chosenFinding(query: LayoutQuery, { kind, at, because }: LayoutTrouble): Finding {
  const what = { hole: 'The hole is', place: 'The place is', edge: 'This is' }[kind];
  return findingOf({
    code: kind === 'place' ? 'tab' : 'start-hole',
    weight: 'decide',
    title: chosenTitles[kind],
    message: `${what} ${because}. It was placed by the rule instead.`,
    place: placeAt(at),
    memberId: query.memberId,
    contourId: query.contourId,
    cures: [{ kind: 'other', say: 'Choose another place, or give it back to the rule.' }],
  });
}

function noStart(
  { memberId, contourId, wishes }: LayoutQuery,
  at: Point,
  waste: 'inside' | 'outside',
): Finding {
  const otherwise =
    waste === 'outside'
      ? ', make the block larger, or start from its edge'
      : ', or start from another place by hand';
  return findingOf({
    code: 'start-hole',
    weight: 'stop',
    title: 'No start hole fits',
    message: `Not even the smallest start hole keeps ${sayLength(wishes.holeClearance)} from the path here.`,
    place: placeAt(at),
    memberId,
    contourId,
    numbers: [{ label: 'wanted diameter', value: wishes.holeDiameter, kind: 'length' }],
    cures: [{ kind: 'other', say: `Lower the clearance from hole to path${otherwise}.` }],
  });
}

function startFindings(query: LayoutQuery, start: StartHole, wanted: number): readonly Finding[] {
  const { memberId, contourId, wishes } = query;
  if (start.kind === 'drawn') return [];
  if (start.kind === 'edge') {
    return [
      findingOf({
        code: 'edge-start',
        weight: 'decide',
        title: 'Started from the edge of the block',
        message:
          'Cut open from outside, the block springs by the stress in it, and the path shifts. A start hole inside a closed frame avoids that.',
        place: placeAt(start),
        memberId,
        contourId,
        cures: [
          {
            kind: 'other',
            say: 'Use a start hole, or rough the block open and let it settle before the skims.',
          },
        ],
      }),
    ];
  }
  if (start.diameter >= wanted) return [];
  return [
    findingOf({
      code: 'start-hole',
      weight: 'decide',
      title: `Start hole of ${sayLength(start.diameter)} instead of ${sayLength(wanted)}`,
      message: `The wanted start hole does not fit into the waste here; ${sayLength(start.diameter)} does, with ${sayLength(wishes.holeClearance)} to the path.`,
      place: placeAt(start),
      memberId,
      contourId,
      numbers: [
        { label: 'wanted diameter', value: wanted, kind: 'length' },
        { label: 'used diameter', value: start.diameter, kind: 'length' },
      ],
      cures: [{ kind: 'other', say: 'Accept the smaller hole, or lower the clearance from hole to path.' }],
    }),
  ];
}

/** Along the rough run's way from the hole to the contour, mm. */
const leadLength = ({ cut }: PlannedCut, stretch: number): number =>
  chainLength(cut.passes[0]?.main[stretch]?.leadIn ?? []);

function leadFinding(
  { memberId, contourId, wishes }: LayoutQuery,
  start: StartHole,
  length: number,
): readonly Finding[] {
  if (start.kind !== 'drilled' || length >= wishes.length * almost) return [];
  return [
    findingOf({
      code: 'lead-in',
      weight: 'note',
      title: 'Lead-in shorter than wanted',
      message: `There is room for a lead-in of ${sayLength(length)} here, not for ${sayLength(wishes.length)}.`,
      place: placeAt(start),
      memberId,
      contourId,
      numbers: [{ label: 'length', value: length, kind: 'length' }],
    }),
  ];
}

/** Lengths are compared with a hair's room for rounding. */
const almost = 0.999;

function tabFindings(query: LayoutQuery, planned: PlannedCut): readonly Finding[] {
  return [...shortTabs(query, planned), ...fewTabs(query, planned)];
}

/** A small loop takes fewer tabs than a person chose. */
function fewTabs({ memberId, contourId }: LayoutQuery, { layout, choice }: PlannedCut): readonly Finding[] {
  const { tabs, closing } = layout;
  if (choice.tabs === null || tabs.length >= choice.tabs) return [];
  return [
    findingOf({
      code: 'tab',
      weight: 'note',
      title: 'Fewer tabs than chosen',
      message: `There is room for ${tabs.length} here, not for ${choice.tabs}.`,
      place: placeAt(closing.at),
      memberId,
      contourId,
      numbers: [{ label: 'tabs', value: tabs.length, kind: 'count' }],
    }),
  ];
}

function shortTabs({ memberId, contourId }: LayoutQuery, { layout }: PlannedCut): readonly Finding[] {
  return layout.tabs.flatMap(({ length, from, to }, i) => {
    const wanted = layout.wantedTabs[i] ?? 0;
    if (length >= wanted * almost) return [];
    return [
      findingOf({
        code: 'tab',
        weight: 'note',
        title: 'Tab shorter than wanted',
        message: `There is no room for a tab of ${sayLength(wanted)} here; it is ${sayLength(length)} long.`,
        place: placeAt({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }),
        memberId,
        contourId,
        numbers: [{ label: 'tab', value: length, kind: 'length' }],
      }),
    ];
  });
}

const placeAt = ({ x, y }: Point) => ({ x, y, reach: 5 });
