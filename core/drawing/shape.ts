import type { Point, Vertex } from '../geometry/contour';
import type { ChainPart, EllipsePart, Part, SplinePart } from './raw-drawing';
import type { Vector } from './transform';

/** The curves of an entity in the drawing's plane, or why there are none. */
export type PieceShape = FoundShape | { readonly reason: string };

export interface FoundShape {
  readonly runs: readonly ShapeRun[];
  /** Something a person should know of how it was read, without its subject: "3 SPLINE on layer X …". */
  readonly remark: string | null;
}

/** Curves joined end to end. */
export interface ShapeRun {
  readonly closed: boolean;
  readonly parts: readonly Part[];
}

/** A line (bulge 0) or an arc of at most a half turn. */
export interface SegmentPart {
  readonly type: 'segment';
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
}

/** What an entity is put together from before its lines and arcs are joined to chains. */
export type Curve = SegmentPart | EllipsePart | SplinePart | ChainPart;

export const oneRun = (closed: boolean, curves: readonly Curve[]): FoundShape => ({
  runs: [{ closed, parts: joinedParts(curves) }],
  remark: null,
});

/** Segments that follow each other as one chain: half the memory of a drawing of lines. */
export function joinedParts(curves: readonly Curve[]): readonly Part[] {
  const parts: Part[] = [];
  let chain: Vertex[] = [];
  let end: Point | null = null;
  for (const curve of curves) {
    if (curve.type !== 'segment') {
      parts.push(curve);
      end = null;
      continue;
    }
    const { from, to, bulge } = curve;
    if (end && end.x === from.x && end.y === from.y)
      chain[chain.length - 1] = { x: from.x, y: from.y, bulge };
    else {
      chain = [{ x: from.x, y: from.y, bulge }];
      parts.push({ type: 'chain', chain });
    }
    chain.push({ x: to.x, y: to.y, bulge: 0 });
    end = to;
  }
  return parts;
}

export const incomplete = 'incomplete: a coordinate or radius is missing';
export const tilted = 'tilted out of the drawing plane';
export const pointLike = 'zero length';

/** Rises or falls by more than a thousandth of its extent: by half a millionth less the length still holds. */
export function isTilted(points: readonly Vector[]): boolean {
  const [x, y, z] = [new Extent(), new Extent(), new Extent()];
  for (const point of points) {
    x.add(point.x);
    y.add(point.y);
    z.add(point.z);
  }
  return z.size() > Math.hypot(x.size(), y.size()) * 0.001;
}

class Extent {
  private low = Infinity;
  private high = -Infinity;

  add(value: number): void {
    if (value < this.low) this.low = value;
    if (value > this.high) this.high = value;
  }

  size(): number {
    return this.high - this.low;
  }
}
