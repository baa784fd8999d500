import type { Point } from '../geometry/contour';

/** Something in a program's text that must not be cut: where it stands and what is wrong, in one sentence. */
export interface ProgramFault {
  /** Line of the text, from 1; null where something is missing from the whole. */
  readonly line: number | null;
  readonly say: string;
  readonly at: Point | null;
}
