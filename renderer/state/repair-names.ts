import type { RepairKind } from '../../core/drawing/drawing';

/** Kinds of repair as a person reads them. */
export const repairNames: Readonly<Record<RepairKind, string>> = {
  gap: 'Gaps',
  duplicate: 'Drawn twice',
  overlap: 'Overlaps',
  'zero length': 'Without length',
  'tiny step': 'Tiny steps',
  'T-joint': 'T-joints',
  'shared edge': 'Shared edges',
  'self-touch': 'Touches itself',
};

/** What is done about each. */
export const repairWays: Readonly<Record<RepairKind, string>> = {
  gap: 'both ends moved to the middle',
  duplicate: 'taken once',
  overlap: 'merged into one edge',
  'zero length': 'left out',
  'tiny step': 'taken out',
  'T-joint': 'end joined to the edge it lies on',
  'shared edge': 'given to both outlines',
  'self-touch': 'parted into two outlines',
};
