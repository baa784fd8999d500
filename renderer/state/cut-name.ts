import type { Point } from '../../core/geometry/contour';
import type { CutLayout } from '../../core/wire/cut-layout';

/** One stretch of a cut: what has a start hole and a place of its own. */
export interface CutName {
  readonly cutId: string;
  readonly stretch: number;
}

/** What of a cut can be taken hold of: a start hole, or the place of a tab and its lead-in. */
export interface CutHandle extends CutName {
  readonly part: 'hole' | 'place';
}

/** A handle on its way. */
export interface CutDrag extends CutHandle {
  /** Where it would be put. */
  readonly at: Point;
  /** How the cut would lie then. */
  readonly layout: CutLayout;
  /** Why it may not be put there, as the end of a sentence; null where it may. */
  readonly because: string | null;
}

export const sameCut = (a: CutName, b: CutName | null): boolean =>
  b !== null && a.cutId === b.cutId && a.stretch === b.stretch;
