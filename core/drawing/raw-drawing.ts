import type { Box, Point } from '../geometry/contour';
import type { DrawingUnit } from '../units';
import type { Unused } from './drawing';

/** A drawing as read, flat (blocks resolved, extrusion applied), in drawing units; its unit is not settled yet. */
export interface RawDrawing {
  /** What `$INSUNITS` states; null where it states none or a unit that no part is drawn in. */
  readonly statedUnit: DrawingUnit | null;
  readonly pieces: readonly Piece[];
  readonly unused: readonly Unused[];
  /** Damage in the file, one sentence each. */
  readonly damage: readonly Damage[];
  /** Around all pieces; inside out where there is none. */
  readonly box: Box;
}

export interface Damage {
  /** *note* where nothing can have been lost, *decide* where a person should look. */
  readonly weight: 'note' | 'decide';
  readonly say: string;
}

/** The curves of one entity, joined end to end. */
export interface Piece {
  readonly layer: string;
  /** DXF entity name. */
  readonly kind: string;
  /** The last part's end runs back to the first part's start. */
  readonly closed: boolean;
  readonly parts: readonly Part[];
}

export type Part = SegmentPart | EllipsePart | SplinePart;

/** A line (bulge 0) or an arc of at most a half turn. */
export interface SegmentPart {
  readonly type: 'segment';
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
}

/** centre + u cos t + v sin t, from `from` to `to` (radians, rising); u and v are conjugate half-diameters. */
export interface EllipsePart {
  readonly type: 'ellipse';
  readonly centre: Point;
  readonly u: Point;
  readonly v: Point;
  readonly from: number;
  readonly to: number;
}

/** A B-spline, rational where weights differ; knots number points + degree + 1. */
export interface SplinePart {
  readonly type: 'spline';
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Point[];
  readonly weights: readonly number[];
}
