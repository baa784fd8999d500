/**
 * Every tolerance of the program, in mm unless its name says otherwise, each with the reason for its size.
 * No literal below 0.001 stands anywhere else in core (the linter sees to it).
 */
export const tolerance = {
  /** Points nearer than this are one point: 500 times double rounding at 10 m, a thousandth of the exactness promised. */
  samePoint: 1e-9,
  /**
   * An arc whose radius the offset brings within this of 0 becomes a point: a fillet of exactly the offset, known by
   * its ends and bulge, has its radius off by the rounding of its ends times radius over chord.
   */
  vanishingRadius: 5e-7,
  /** Two boundaries no farther apart than this coincide: an offset there and back may be off by ten same-point steps. */
  sameBoundary: 1e-7,
  /** How far a computed point may lie off its carrier and still be on it: double rounding at 10 m is 2e-12, four operations deep. */
  onCurve: 1e-9,
  /** A piece of an offset that comes nearer to the source than the offset by more than this is cut away: twice the same-point distance. */
  tooNear: 2e-9,
  /** Bulges smaller than this are lines: over a 1 m chord the sagitta would be 0.5 nm. */
  straightBulge: 1e-9,
  /**
   * From this radius on an arc is reckoned with by way of its ends: a centre 100 m away still has ten thousand units of
   * double rounding to a same-point distance, one a hundred times as far has lost them.
   */
  flatRadius: 1e5,
  /** Ends of drawing segments nearer than this belong together unless the job says otherwise (common practice for customer drawings). */
  gap: 0.005,
  /** A drawn piece shorter than this is a slip of the mouse: no direction can be relied upon at ten times the same-point distance. */
  zeroLength: 1e-6,
  /** Pieces no farther apart than this are one piece drawn twice: both ways of fitting a curve stay within it. */
  duplicate: 0.001,
  /** A step no longer than this between two far longer edges is a slip of the exporting program: a fifth of the gap. */
  tinyStep: 0.001,
  /** Splines and ellipses become arcs no farther away than this: a tenth of the finest clearance step in use. */
  curveFit: 0.0005,
  /** A choice for a corner belongs to the corner of its contour nearest to the stored place, no farther away than this: twice the gap. */
  cornerPlace: 0.01,
  /** Two directions that differ by less than this (radians) are tangent: at 1 m the side step is 1 nm. */
  tangentAngle: 1e-9,
  /** A remainder thinner than this is not reported: a hundredth of the accuracy of the best machine. */
  remainder: 0.00002,
  /**
   * A contour for a control that offsets by itself is opened with the offset plus this, so that no inside arc is as
   * small as the offset itself, which controls refuse: a tenth of the finest accuracy in the trade, above six decimals' rounding.
   */
  compensationRoom: 0.0005,
  /** The radii at both ends of a programmed arc may differ by this at most: RS274/NGC (NIST IR 6556) refuses more. */
  arcRadii: 0.002,
  /** The same in a program in inch: 0.0002 in by the same source. */
  arcRadiiInch: 0.00508,
  /** An offset as a program's comment states it may be off by rounding to a tenth of a micrometre. */
  statedOffset: 0.00006,
  /** Two roots of a distance equation nearer than this share of a stretch are one: a tenth of a nanometre on a metre. */
  rootWidth: 1e-13,
  /** Differences of two products smaller than this share of them are rounding: fifty units in a double's last place. */
  cancelled: 1e-14,
  /**
   * A greatest or mean distance that has no closed form is right within this: a thousandth of the finest clearance
   * step, ten times finer than the last digit shown.
   */
  distanceBound: 1e-6,
  /** Measured deviations closer together than this cannot be told apart: common practice for vision systems and CMMs. */
  measuringNoise: 0.0005,
  /** The as-cut clearance counts as even within this: a fifth of a tenth of a thousandth of an inch. */
  uneven: 0.0005,
  /** Chords of a leaning wire's arcs, unless the job says otherwise: what they leave is below what the proof calls stock left. */
  leaningChord: 0.0004,
  /** Chords that a person asks for are no finer than this: on a circle of 1 m they would be 22,000, more than programs hold. */
  finestChord: 0.00001,
  /** A leaning wire may cut this far beside the wanted surface unsaid: the accuracy of the best machines, ± 0.0001 in, rounded down. */
  ruledSurface: 0.002,
  /** Chord error of the polygons in the independent proof: of 10,000 lines and arcs it still takes seconds, and what it cannot see is a hundredth of the finest clearance. */
  proofChord: 0.0002,
  /** The proof calls a gouge what goes deeper into the member than this: the chord errors of path and contour, and the clipper grid. */
  proofGouge: 0.0005,
} as const;

export type Tolerances = typeof tolerance;
