import type { Contour, Point } from '../geometry/contour';
import type { StartHole } from '../plan';

/** One pass's wire-centre loop and the part of the contour a control offsets by itself. */
export interface PassLoops {
  readonly pass: number;
  readonly offset: number;
  readonly feed: number;
  readonly loop: Contour;
  /** The contour that gives this loop when a control offsets it; null where there is none. */
  readonly contour: Contour | null;
}

/** A loop with everything needed to cut it. */
export interface Lead {
  /** Null where no hole fits. */
  readonly start: StartHole | null;
  /** Where the main run begins and where it ends, on the rough loop; between them, forwards, lies the tab. */
  readonly begin: Point;
  readonly end: Point;
  /** Where the wire waits beside the begin and the end, in the waste. */
  readonly besideBegin: Point;
  readonly besideEnd: Point;
  readonly tabLength: number;
}
