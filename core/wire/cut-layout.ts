import type { Point } from '../geometry/contour';
import type { StartHole, Tab } from '../plan';

/** Where everything of a cut lies on the rough pass's loop: what its runs are made from. */
export interface CutLayout {
  /** In the direction of travel; one where there is no tab. */
  readonly stretches: readonly Stretch[];
  /** Tab i lies between the end of stretch i and the begin of the next. */
  readonly tabs: readonly Tab[];
  /** The tabs' lengths as the rule or a person wanted them, mm. */
  readonly wantedTabs: readonly number[];
  /** Where a pass that runs all round, from the first stretch's begin, leaves the loop again. */
  readonly closing: RunEnd;
  /** How far runs go over what was cut before them at each end of a tab, mm: as wanted, or less where the loop bends. */
  readonly overlap: number;
  /** Wishes of a person that could not be met, each with the reason. */
  readonly troubles: readonly LayoutTrouble[];
}

export interface Stretch {
  /** Null where no hole fits. */
  readonly start: StartHole | null;
  /** The same place twice where there is no tab. */
  readonly begin: RunEnd;
  readonly end: RunEnd;
}

/** One end of a run: where the wire waits in the waste, and how it comes from there to the loop. */
export interface RunEnd {
  /** On the rough loop. */
  readonly at: Point;
  readonly wait: Point;
  /** Radius of the arc that runs into the loop, after a straight; 0: straight from where the wire waits. */
  readonly arcRadius: number;
}

export interface LayoutTrouble {
  readonly kind: 'hole' | 'place' | 'edge';
  readonly stretch: number;
  readonly at: Point;
  /** The end of a sentence, e.g. "in a clamp zone". */
  readonly because: string;
}
