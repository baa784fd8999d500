/**
 * A vertex and the segment that leaves it. `bulge` = tan(angle / 4) of the segment to the next vertex
 * (DXF reference, group 42): 0 a line, positive counter-clockwise, 1 a half turn. |bulge| ≤ 1, so an
 * arc over a half turn is two segments and a full circle two half turns. mm.
 */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** A closed ring: the last vertex's segment leads back to the first, so that a gap has no representation. */
export type Contour = readonly Vertex[];

/** Loops that bound an area together: outer loops counter-clockwise, holes clockwise. */
export type Region = readonly Contour[];

/** An open run of segments; the last vertex's bulge has no meaning and is 0. */
export type Chain = readonly Vertex[];

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}
