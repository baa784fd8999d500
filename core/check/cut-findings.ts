import type { Finding } from '../finding';
import type { Contour, Point } from '../geometry/contour';
import { contourBox } from '../geometry/contour-measures';
import type { CutWishes } from '../wire/cut-wishes';
import type { PlannedCut } from '../wire/plan-cuts';
import { findingOf } from '../finding-of';
import { sayLength } from '../say';
import { layoutFindings } from './layout-findings';

export interface CutQuery {
  readonly memberId: string;
  readonly contourId: string;
  readonly role: 'die' | 'punch';
  readonly designed: readonly Contour[];
  readonly cuts: readonly PlannedCut[];
  readonly reach: number;
  readonly wishes: CutWishes;
}

/** What is wrong with the way a member is cut: the wire does not go in, a pass breaks up, hole, lead-in or tab do not fit. */
export function cutFindings(query: CutQuery): readonly Finding[] {
  const { cuts, designed } = query;
  if (designed.length > 0 && cuts.length === 0) return [wireTooWide(query)];
  return cuts.flatMap((planned) => [...brokenPasses(query, planned), ...layoutFindings(query, planned)]);
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
  { brokenPasses: passes, layout, cut }: PlannedCut,
): readonly Finding[] {
  return passes.map((pass) => {
    const goesIn = cut.passes.some((path) => path.pass === pass);
    return findingOf({
      code: 'slot',
      weight: 'stop',
      title: goesIn ? `Pass ${pass + 1} does not get through a neck` : `Pass ${pass + 1} does not go in`,
      message: `With the stock it leaves, pass ${pass + 1} ${goesIn ? 'breaks up in a neck' : 'has no room in an opening'} that the finishing pass goes through, and the finishing pass would meet uncut stock there.`,
      place: placeAt(layout.closing.at),
      memberId,
      contourId,
      numbers: [{ label: 'pass', value: pass + 1, kind: 'count' }],
      cures: [{ kind: 'other', say: 'Lower the stock left by this pass, or choose a thinner wire.' }],
    });
  });
}

const placeAt = ({ x, y }: Point) => ({ x, y, reach: 5 });
