import type { Contour, Region } from '../../../core/geometry/contour';

/** A library that can offset an outline. */
export interface Peer {
  readonly name: string;
  /** Polygon libraries get the outline as chords; the others take its lines and arcs. */
  readonly takesChords: boolean;
  /** Brings an outline into the library's own form, which is not timed. `chord` is the largest chord error, mm. */
  prepare(outline: Contour, chord: number): Promise<TimedOffset>;
}

/** The call that is timed: from the library's own form to its own form, in favour of the library. */
export type TimedOffset = (distance: number) => ReadResult;

/** Reads the last result as contours, to count and measure it. Called before the next offset. */
export type ReadResult = () => Region;
