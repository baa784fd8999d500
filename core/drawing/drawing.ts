import type { Finding } from '../finding';
import type { Box, Contour } from '../geometry/contour';
import type { DrawingUnit } from '../units';

/** The outline of a drawing: closed contours, nested, and an account of everything that is not among them. mm. */
export interface Drawing {
  readonly unit: DrawingUnit;
  readonly contours: readonly DrawingContour[];
  readonly unused: readonly Unused[];
  readonly box: Box;
  /** Largest distance between a spline or ellipse and the arcs that stand for it, mm; 0 where there is none. */
  readonly largestFitError: number;
  readonly findings: readonly Finding[];
}

export interface DrawingContour {
  /** `c1`, `c2`, … largest outer first, holes after the contour that holds them: the same for the same drawing. */
  readonly id: string;
  /** Counter-clockwise, whatever its depth. */
  readonly contour: Contour;
  readonly layer: string;
  /** 0 an outer contour, 1 a hole in it, 2 an island in the hole … */
  readonly depth: number;
  readonly parentId: string | null;
  /** Largest gap that was closed in it and largest curve-fit error made in it, mm. */
  readonly largestGap: number;
  readonly fitError: number;
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

/** A drawing as read, before its unit is settled; coordinates in drawing units. */
export interface DrawingSize {
  /** The unit the header states; null where it states none. */
  readonly statedUnit: DrawingUnit | null;
  /** Width and height of the geometry in drawing units: what a person needs to tell mm from inch. */
  readonly width: number;
  readonly height: number;
}
