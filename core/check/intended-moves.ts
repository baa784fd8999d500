import type { Point } from '../geometry/contour';
import type { OffsetSide } from './program-reading';

/** What a program is to say, exact and before any words: what its text is held against. mm. */
export interface IntendedMove {
  readonly isRapid: boolean;
  readonly to: Point;
  /** How far U and V lean the wire at the end; 0 while it stands upright. */
  readonly lean: Point;
  /** tan(angle / 4), 0 for a straight move. */
  readonly bulge: number;
  /** mm/min; null for a rapid move. */
  readonly feed: number | null;
  readonly side: OffsetSide;
  readonly register: number | null;
}

export interface IntendedPause {
  /** So many moves are done by then. */
  readonly after: number;
  /** The M words that stand there, e.g. `M00`. */
  readonly words: readonly string[];
}

export interface IntendedMoves {
  readonly moves: readonly IntendedMove[];
  readonly pauses: readonly IntendedPause[];
}
