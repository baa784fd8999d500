import type { Part } from './raw-drawing';
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

export const oneRun = (closed: boolean, parts: readonly Part[]): FoundShape => ({
  runs: [{ closed, parts }],
  remark: null,
});

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
