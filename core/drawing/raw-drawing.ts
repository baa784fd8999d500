import type { Box, Chain, Point } from '../geometry/contour';
import type { DrawingUnit } from '../units';
import type { DrawingFormat, Unused } from './drawing';

/** A drawing as read, flat (blocks resolved, extrusion applied), in drawing units; its unit is not settled yet. */
export interface RawDrawing {
  readonly format: DrawingFormat;
  /** What `$INSUNITS` states; null where it states none or a unit that no part is drawn in. */
  readonly statedUnit: DrawingUnit | null;
  readonly pieces: readonly Piece[];
  readonly unused: readonly Unused[];
  /** Damage in the file, one sentence each. */
  readonly damage: readonly Damage[];
  /** Where texts stand: a cell with words in it belongs to a title block. */
  readonly texts: readonly Point[];
  readonly dimensions: readonly RawDimension[];
  /** Around all pieces that are shown; inside out where there is none. */
  readonly box: Box;
}

/** A dimension of the drawing, drawing units and radians. */
export interface RawDimension {
  readonly layer: string;
  readonly kind: 'length' | 'diameter' | 'radius';
  /** The two points it is measured between; for a radius the first is the centre. */
  readonly from: Point;
  readonly to: Point;
  /** Direction it is measured along (unit); null where it is the straight distance. */
  readonly along: Point | null;
  /** The distance as the points have it. */
  readonly measured: number;
  /** The distance as the file states it (group 42); null where it states none. */
  readonly stated: number | null;
  /** What is written in place of the distance (group 1); empty where the distance itself is shown. */
  readonly text: string;
  /** Deviations by its style, in the numbers that are shown; null where it shows none. */
  readonly deviation: { readonly plus: number; readonly minus: number } | null;
  /** What the shown number is multiplied with (DIMLFAC). */
  readonly factor: number;
  readonly at: Point;
}

export interface Damage {
  /** *note* where nothing can have been lost, *decide* where a person should look. */
  readonly weight: 'note' | 'decide';
  readonly say: string;
}

/** The curves of one entity, joined end to end. */
export interface Piece {
  readonly layer: string;
  /** DXF entity name, or SVG element name. */
  readonly kind: string;
  /** Colour index, 1 to 255, that of the layer resolved; in an SVG the colour as 0xRRGGBB. */
  readonly colour: number;
  /** Why it is not shown and so not taken unless its layer is chosen; null where it is shown. */
  readonly hidden: 'layer is off' | 'layer is frozen' | null;
  /** The edge of a filling: stands in where nothing else closes. */
  readonly isFilling: boolean;
  /** The last part's end runs back to the first part's start. */
  readonly closed: boolean;
  readonly parts: readonly Part[];
}

export type Part = ChainPart | EllipsePart | SplinePart;

/** Lines and arcs of at most a half turn, joined end to end. */
export interface ChainPart {
  readonly type: 'chain';
  readonly chain: Chain;
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
