import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { Box } from '../geometry/contour';
import { contourBox } from '../geometry/contour-measures';
import { sayLength } from '../say';
import type { DrawingContour, LeftOutContour, Repair, RepairKind, Unused } from './drawing';
import { groupBy } from './group-by';
import { isBodyReason } from './reason-for-kind';

/** Solids and regions: their geometry is kept in a form that only their own program reads. */
export function unsupportedFindings(unused: readonly Unused[]): readonly Finding[] {
  const bodies = unused.filter(({ reason }) => isBodyReason(reason));
  if (bodies.length === 0) return [];
  const total = bodies.reduce((sum, { count }) => sum + count, 0);
  const rows = [...bodies].sort((a, b) => (a.kind < b.kind ? -1 : a.kind > b.kind ? 1 : 0));
  const list = rows.map(({ layer, kind, count }) => `${count} ${kind} on layer ${layer}`).join('; ');
  const ask =
    'Ask the customer to explode the regions or solids into lines and arcs, or to export the flat outline as polylines, and to send that DXF.';
  return [
    findingOf({
      code: 'drawing-unsupported',
      weight: 'decide',
      title: 'Solids that cannot be read',
      message: `${list}: a DXF does not give their edges openly, so they are not part of the outline.`,
      numbers: [{ label: 'Entities', value: total, kind: 'count' }],
      cures: [{ kind: 'other', say: ask }],
    }),
  ];
}

/** That the outline comes from fillings, where it does. */
export function fillingFindings(kinds: ReadonlyMap<string, number>): readonly Finding[] {
  if (kinds.size === 0) return [];
  const list = [...kinds].map(
    ([kind, count]) => `${count} ${count === 1 ? 'boundary' : 'boundaries'} of ${kind}`,
  );
  return [
    findingOf({
      code: 'outline-from-filling',
      weight: 'decide',
      title: 'Outline from a filling',
      message: `No edge of the drawing closes; the outline is taken from ${list.join(' and ')}. Check that it is the part's edge.`,
      cures: [{ kind: 'other', say: 'Ask the customer for the outline as lines, arcs or polylines.' }],
    }),
  ];
}

/** What stands there closed and is not taken; a decision where something that is taken lies within it. */
export function leftOutFindings(
  leftOut: readonly LeftOutContour[],
  contours: readonly DrawingContour[],
): readonly Finding[] {
  if (leftOut.length === 0) return [];
  const boxes = contours.map(({ contour }) => contourBox(contour));
  return [...groupBy(leftOut, ({ reason }) => reason)].map(([reason, all]) => {
    const ids = all.map(({ id }) => id);
    const shown =
      ids.length > mostIds
        ? `${ids.slice(0, mostIds).join(', ')} and ${ids.length - mostIds} more`
        : ids.join(', ');
    const isAround = all.some(({ contour }) => boxes.some((box) => holds(contourBox(contour), box)));
    const box = contourBox((all[0] as LeftOutContour).contour);
    return findingOf({
      code: 'contour-left-out',
      weight: isAround && reason !== byHand ? 'decide' : 'note',
      title: all.length === 1 ? 'Contour left out' : 'Contours left out',
      message: `${shown} ${all.length === 1 ? 'is' : 'are'} closed and not taken: ${reason}.`,
      place: {
        x: (box.minX + box.maxX) / 2,
        y: (box.minY + box.maxY) / 2,
        reach: Math.max(box.maxX - box.minX, box.maxY - box.minY) / 2,
      },
      numbers: [{ label: 'Contours', value: all.length, kind: 'count' }],
      cures: [{ kind: 'other', say: 'Take it by a click on it, if it is an edge of the part.' }],
    });
  });
}

export const byHand = 'left out by hand';
const mostIds = 6;

const holds = (outer: Box, inner: Box): boolean =>
  outer.minX <= inner.minX &&
  outer.minY <= inner.minY &&
  outer.maxX >= inner.maxX &&
  outer.maxY >= inner.maxY;

/** One note for each kind of repair that has no finding of its own, at the largest of them. */
export function repairFindings(repairs: readonly Repair[]): readonly Finding[] {
  return [...groupBy(repairs, ({ kind }) => kind)].flatMap(([kind, all]) => {
    const say = words[kind];
    if (!say) return [];
    const largest = all.reduce((most, repair) => (repair.size > most.size ? repair : most));
    const size = largest.size > 0 ? `, the largest ${sayLength(largest.size)}` : '';
    return [
      findingOf({
        code: 'outline-repaired',
        weight: 'note',
        title: say.title,
        message: `${all.length} × ${say.message}${size}, at x ${largest.place.x.toFixed(3)}, y ${largest.place.y.toFixed(3)} mm.`,
        place: { ...largest.place, reach: Math.max(1, largest.size) },
        numbers: [
          { label: 'Places', value: all.length, kind: 'count' },
          { label: 'Largest', value: largest.size, kind: 'length' },
        ],
      }),
    ];
  });
}

/** Gaps have a note for each contour; duplicates and pieces without length stand in the list of what is not used. */
const words: Partial<Record<RepairKind, { readonly title: string; readonly message: string }>> = {
  overlap: { title: 'Overlap merged', message: 'pieces that partly overlap were merged' },
  'tiny step': { title: 'Tiny step taken out', message: 'a step too small to be meant was taken out' },
  'T-joint': { title: 'T-joint closed', message: 'an end on the middle of another piece was joined to it' },
  'shared edge': { title: 'Shared edge', message: 'an edge drawn for two outlines belongs to both' },
  'self-touch': {
    title: 'Parted where it touches itself',
    message: 'an outline was parted where it touches itself',
  },
};
