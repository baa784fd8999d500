import type { Finding } from '../finding';
import type { Box, Contour, Point } from '../geometry/contour';
import type { DrawingUnit } from '../units';

/** The outline of a drawing: closed contours, nested, and an account of everything that is not among them. mm. */
export interface Drawing {
  readonly format: DrawingFormat;
  readonly unit: DrawingUnit;
  readonly contours: readonly DrawingContour[];
  /** Closed contours that are not taken: a title block, or what a person left out. Their ids go on from the others'. */
  readonly leftOut: readonly LeftOutContour[];
  readonly unused: readonly Unused[];
  readonly box: Box;
  /** Largest distance between a spline or ellipse and the arcs that stand for it, mm; 0 where there is none. */
  readonly largestFitError: number;
  /** Everything that was put right, each with its place and size. */
  readonly repairs: readonly Repair[];
  /** The lengths that the drawing states, beside the contour they belong to. */
  readonly dimensions: readonly Dimension[];
  readonly findings: readonly Finding[];
}

export type DrawingFormat = 'dxf' | 'svg' | 'csv';

export interface DrawingContour {
  /** `c1`, `c2`, … largest outer first, holes after the contour that holds them: the same for the same drawing. */
  readonly id: string;
  /** Counter-clockwise, whatever its depth. */
  readonly contour: Contour;
  readonly layer: string;
  /** That of its longest piece: colour index, 1 to 255; in an SVG 0xRRGGBB. */
  readonly colour: number;
  /** 0 an outer contour, 1 a hole in it, 2 an island in the hole … */
  readonly depth: number;
  readonly parentId: string | null;
  /** Largest gap that was closed in it and largest curve-fit error made in it, mm. */
  readonly largestGap: number;
  readonly fitError: number;
}

export interface LeftOutContour {
  readonly id: string;
  readonly contour: Contour;
  readonly layer: string;
  /** Why, in a few words, e.g. "title block". */
  readonly reason: string;
}

/** Entities that are not part of any contour, counted. */
export interface Unused {
  readonly layer: string;
  /** DXF entity name, e.g. `TEXT`. */
  readonly kind: string;
  /** Why, in a few words, e.g. "open chain", "duplicate". */
  readonly reason: string;
  readonly count: number;
}

/**
 * What can be put right: a gap between ends closed; a piece drawn twice, or partly over another, taken once; a piece
 * or step of no length left out; an end on the middle of another piece joined to it; an edge that two outlines have in
 * common given to both; an outline that touches itself parted there.
 */
export const repairKinds = [
  'gap',
  'duplicate',
  'overlap',
  'zero length',
  'tiny step',
  'T-joint',
  'shared edge',
  'self-touch',
] as const;

export type RepairKind = (typeof repairKinds)[number];

/** Kinds that a person can switch off. A piece without length has no direction: it is never kept. */
export type RepairSwitch = Exclude<RepairKind, 'zero length'>;

export const repairSwitches: readonly RepairSwitch[] = repairKinds.filter((kind) => kind !== 'zero length');

/** One thing that was put right. */
export interface Repair {
  readonly kind: RepairKind;
  readonly place: Point;
  /** How much it moved or took away, mm: the width of a gap, the length of what was drawn twice. */
  readonly size: number;
}

/** What of a drawing is taken; empty lists and false leave the rule in force. */
export interface DrawingChoice {
  /** Only these layers, among them such as are off or frozen; null: all that are shown. */
  readonly layers: readonly string[] | null;
  /** Only these colours (colour index; in an SVG 0xRRGGBB); null: all. */
  readonly colours: readonly number[] | null;
  /** Contours that a person took or left out against the rule, by id. */
  readonly contours: Readonly<Record<string, 'take' | 'leave out'>>;
}

/** A length that the drawing states, mm. */
export interface Dimension {
  readonly kind: 'length' | 'diameter' | 'radius';
  readonly from: Point;
  readonly to: Point;
  /** As the geometry has it. */
  readonly measured: number;
  /** As it is written: the number of its text, else the measured one. */
  readonly nominal: number;
  /** The text that stands there in place of the measured number; empty where there is none. */
  readonly text: string;
  /** Stated deviations from the nominal size, minus with its sign; null where none is stated. */
  readonly tolerance: { readonly plus: number; readonly minus: number } | null;
  /** By how much it grows for each mm that its contour grows on each side; 0 where that changes nothing. */
  readonly growth: number;
  /**
   * What its contour must grow by on each side for the dimension to lie in the middle of the stated tolerance, mm: a
   * quarter of plus and minus together across the contour, as much less than zero across a gap in it; 0 without a
   * tolerance, and where growth changes nothing, as between edges that face the same way.
   */
  readonly sizeShift: number;
  /** The contour that both its points lie on; null where there is none. */
  readonly contourId: string | null;
}
