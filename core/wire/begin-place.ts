import type { Point } from '../geometry/contour';
import type { LoopPosition } from '../geometry/loop-position';
import type { StartHole } from '../plan';
import type { RunEnd } from './cut-layout';

/** A place where a stretch may begin, worked out when first asked for; null where no run can begin or end there. */
export interface BeginPlace {
  readonly position: LoopPosition;
  readonly begin: () => RunEnd | null;
}

export interface PlacedStart {
  /** Index of the place taken. */
  readonly place: number;
  readonly hole: StartHole;
  /** As the place's, but towards the hole where the lead-in is to be straight. */
  readonly begin: RunEnd;
}

export interface StartSearch {
  readonly placed: PlacedStart | null;
  /** Why what a person chose could not be taken. */
  readonly trouble: { readonly kind: 'hole' | 'edge'; readonly at: Point; readonly because: string } | null;
}
