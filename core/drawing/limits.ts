/** How much one drawing may hold, all in one place: what is beyond is refused with what to do instead. */
export const limits = {
  /** A part outline is rarely over a megabyte; beyond this the file, its columns and its pieces would not fit into 1 GB. */
  bytes: 128 * 1024 * 1024,
  /** Entities once all blocks are inserted: an array in an array multiplies, a file of a kilobyte can ask for billions. */
  entities: 250_000,
  /** No drawing unit makes a press part larger than this; beyond it doubles lose the same-point distance. */
  coordinate: 1e9,
  /** Points that curves are given by, all together: a single spline may state a million. */
  curvePoints: 2_000_000,
  /** Arcs that curves become, counted more for high degrees: some three seconds of fitting. A spline of a part becomes ten to fifty. */
  fittedArcs: 80_000,
  /** Blocks in blocks in blocks. */
  nesting: 64,
  /** Closed contours: each is nested and looked at; beyond these it is a pattern for another process. */
  contours: 100_000,
  /** Pairs of curves whose boxes overlap, looked at one by one; an outline has a few for each curve. */
  overlappingBoxes: 6_000_000,
  /** Ends near the middle of other pieces, looked at one by one. */
  contacts: 500_000,
  /** Pairs of contours that meet: beyond these it is a pattern, not outlines. */
  meetings: 20_000,
  /** Places where two contours meet that are told apart. */
  meetingPlaces: 200,
} as const;
