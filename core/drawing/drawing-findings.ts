import type { Cure, Finding, FindingNumber, Place } from '../finding';
import { findingOf } from '../finding-of';
import type { Point } from '../geometry/contour';
import { contourBox } from '../geometry/contour-measures';
import type { DrawingContour, Unused } from './drawing';
import type { Meeting } from './meetings';
import type { OpenPlace } from './open-places';
import type { Damage } from './raw-drawing';
import type { Gap } from './ring';
import { sayLength } from '../say';

/** Damage in the file: what was mended, and what a person should look at. */
export const damageFindings = (damage: readonly Damage[]): readonly Finding[] =>
  damage.map(({ weight, say }) =>
    findingOf({
      code: 'drawing-mended',
      weight,
      title: weight === 'note' ? 'File mended' : 'File may be incomplete',
      message: say,
    }),
  );

/** One note that sums up what is not part of the outline; none where all is. */
export function unusedFindings(unused: readonly Unused[]): readonly Finding[] {
  if (unused.length === 0) return [];
  const total = unused.reduce((sum, { count }) => sum + count, 0);
  const rows = unused.map(
    ({ layer, kind, reason, count }) => `${count} ${kind} on layer ${layer} (${reason})`,
  );
  const shown = rows.slice(0, mostRows).join('; ');
  const rest =
    rows.length > mostRows ? `; and ${rows.length - mostRows} more rows in the list of unused entities` : '';
  const are = total === 1 ? 'entity is' : 'entities are';
  const message = `${total} ${are} not part of the outline: ${shown}${rest}.`;
  return [
    findingOf({
      code: 'drawing-not-used',
      weight: 'note',
      title: 'Not part of the outline',
      message,
      numbers: [count('Entities', total)],
    }),
  ];
}

const mostRows = 8;

/** One finding for each place where the outline does not close. */
export const openFindings = (places: readonly OpenPlace[], gapTolerance: number): readonly Finding[] =>
  places.map(({ at, layer, pieces, runs, gap, isBranch }) => {
    const what =
      runs > 1
        ? `${runs} open runs of ${pieces} pieces`
        : `${pieces === 1 ? 'A piece' : `A run of ${pieces} pieces`}`;
    const verb = runs > 1 ? 'do' : 'does';
    const hangs = isBranch ? ' It branches off a closed contour.' : '';
    const nearest =
      gap === null
        ? 'No other open end is near.'
        : `The nearest open end is ${sayLength(gap)} away; the gap tolerance is ${sayLength(gapTolerance)}.`;
    const cures: Cure[] = [
      { kind: 'other', say: 'Close it in the drawing, or accept that it is no edge of the part.' },
    ];
    if (gap !== null)
      cures.unshift({
        kind: 'other',
        say: `Raise the gap tolerance above ${sayLength(gap)}, if the two ends belong together.`,
      });
    return findingOf({
      code: 'contour-open',
      weight: 'decide',
      title: isBranch ? 'Branch off a contour' : 'Open contour',
      message: `${what} on layer ${layer} ${verb} not close.${hangs} ${nearest}`,
      place: placeAt(at, Math.max(gap ?? 0, smallestReach)),
      numbers: [count('Pieces', pieces), ...(gap === null ? [] : [length('Gap', gap)])],
      cures,
    });
  });

/** One note for each contour in which gaps were closed, at the largest of them. */
export function gapFinding(contour: DrawingContour, gaps: readonly Gap[]): readonly Finding[] {
  const [largest] = [...gaps].sort((a, b) => b.size - a.size || a.at.x - b.at.x || a.at.y - b.at.y);
  if (!largest) return [];
  const many = gaps.length === 1 ? 'A gap' : `${gaps.length} gaps`;
  const size =
    gaps.length === 1 ? `of ${sayLength(largest.size)} was` : `of up to ${sayLength(largest.size)} were`;
  const message = `${many} ${size} closed in contour ${contour.id}: both ends moved to the middle between them.`;
  return [
    findingOf({
      code: 'gap-closed',
      weight: 'note',
      title: gaps.length === 1 ? 'Gap closed' : 'Gaps closed',
      message,
      place: placeAt(largest.at, smallestReach),
      contourId: contour.id,
      numbers: [count('Gaps', gaps.length), length('Largest gap', largest.size)],
    }),
  ];
}

/** The note for a contour with splines or ellipses in it. */
export function fitFinding(contour: DrawingContour): Finding {
  const { minX, minY, maxX, maxY } = contourBox(contour.contour);
  const message =
    `The splines and ellipses of contour ${contour.id} became arcs that run tangent into one another; ` +
    `the largest error is ${sayLength(contour.fitError)}.`;
  return findingOf({
    code: 'curve-fitted',
    weight: 'note',
    title: 'Curves became arcs',
    message,
    place: { x: (minX + maxX) / 2, y: (minY + maxY) / 2, reach: Math.max(maxX - minX, maxY - minY) / 2 },
    contourId: contour.id,
    numbers: [length('Largest error', contour.fitError)],
  });
}

/**
 * One finding for each pair of contours that meet, at the first place where they do: a stop where one passes through
 * the other, a decision where they only touch.
 */
export function meetingFindings(
  meetings: readonly Meeting[],
  contours: readonly DrawingContour[],
): readonly Finding[] {
  const rest = meetings.slice(mostMeetings);
  const [next] = rest;
  const shown = next && rest.length > 1 ? [...meetings.slice(0, mostMeetings)] : meetings;
  const findings = shown.flatMap(({ first, second, places, isTouch }) => {
    const [a, b] = [contours[first], contours[second]];
    const [at] = places;
    if (!a || !b || !at) return [];
    const does = isTouch ? 'touch' : 'cross';
    const whom =
      first === second ? `Contour ${a.id} ${does}es itself` : `Contours ${a.id} and ${b.id} ${does}`;
    const often = places.length === 1 ? '' : ` at ${places.length} places, the first`;
    const then = isTouch ? 'the part has no width there' : 'inside and outside cannot be told apart there';
    const cut = isTouch
      ? 'Cut them as two if that is meant; else correct the outline in the drawing, or leave one of the contours out.'
      : 'Correct the outline in the drawing, or leave one of the contours out.';
    return [
      findingOf({
        code: isTouch ? 'contours-touch' : 'contours-cross',
        weight: isTouch ? 'decide' : 'stop',
        title: `Contour${first === second ? ` ${does}es itself` : `s ${does}`}`,
        message: `${whom}${often} at x ${at.x.toFixed(3)}, y ${at.y.toFixed(3)} mm: ${then}.`,
        place: placeAt(at, smallestReach),
        contourId: a.id,
        numbers: [count('Places', places.length)],
        cures: [{ kind: 'other', say: cut }],
      }),
    ];
  });
  return next && rest.length > 1 ? [...findings, furtherMeetings(next, rest.length)] : findings;
}

/** Beyond so many pairs one row speaks for the rest: nobody goes through thousands. */
const mostMeetings = 50;

function furtherMeetings({ isTouch, places }: Meeting, pairs: number): Finding {
  const at = places[0] ?? { x: 0, y: 0 };
  const does = isTouch ? 'touch' : 'cross';
  return findingOf({
    code: isTouch ? 'contours-touch' : 'contours-cross',
    weight: isTouch ? 'decide' : 'stop',
    title: `More contours ${does}`,
    message: `${pairs} more pairs of contours ${does}, the first at x ${at.x.toFixed(3)}, y ${at.y.toFixed(3)} mm.`,
    place: placeAt(at, smallestReach),
    numbers: [count('Pairs', pairs)],
    cures: [
      { kind: 'other', say: 'Choose the layers or colours that hold the outline, or correct the drawing.' },
    ],
  });
}

/** Half width to zoom to around a point, mm: the joint and its neighbours. */
const smallestReach = 1;

const placeAt = ({ x, y }: Point, reach: number): Place => ({ x, y, reach });
const count = (label: string, value: number): FindingNumber => ({ label, value, kind: 'count' });
const length = (label: string, value: number): FindingNumber => ({ label, value, kind: 'length' });
