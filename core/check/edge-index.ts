import Flatbush from 'flatbush';
import type { GridPath, GridPoint } from './grid-polygons';

/** The edges of polygons on the grid in a spatial index, to ask how far a point is from them. Grid units. */
export class EdgeIndex {
  /** Start and extent of every edge, four numbers each. */
  private readonly edges: Float64Array;
  private readonly count: number;
  private readonly tree: Flatbush | null;
  /** The edge that was nearest to the last point: points are asked for along outlines. */
  private last = 0;

  constructor(paths: readonly GridPath[]) {
    this.count = paths.reduce((sum, path) => sum + path.length, 0);
    this.edges = new Float64Array(4 * this.count);
    this.tree = this.count === 0 ? null : new Flatbush(this.count);
    let at = 0;
    for (const path of paths) {
      path.forEach((a, i) => {
        const b = path[(i + 1) % path.length] as GridPoint;
        this.edges.set([a.X, a.Y, b.X - a.X, b.Y - a.Y], at);
        at += 4;
        this.tree?.add(Math.min(a.X, b.X), Math.min(a.Y, b.Y), Math.max(a.X, b.X), Math.max(a.Y, b.Y));
      });
    }
    this.tree?.finish();
  }

  /** The distance of a point to the nearest edge where it is greater than `than`; null where some edge is as near. */
  distanceBeyond({ X, Y }: GridPoint, than: number): number | null {
    if (this.count > 0 && this.nearestFromLast(X, Y) <= than * than) return null;
    for (let reach = Math.max(than, 1); ; reach *= 4) {
      const nearest = this.nearestWithin(X, Y, reach);
      if (nearest <= than) return null;
      // Nothing within the box's half width: an edge may still be nearer in a corner of the box than one outside it.
      if (nearest <= reach || this.covers(X, Y, reach)) return nearest;
    }
  }

  /** The distance of a point to the nearest edge where it is less than `than`; null where no edge is as near. */
  distanceWithin({ X, Y }: GridPoint, than: number): number | null {
    if (than <= 0) return null;
    const nearest = this.nearestWithin(X, Y, than);
    return nearest < than ? nearest : null;
  }

  /** A place where an edge crosses one of these; null where none does. */
  crossing(a: GridPoint, b: GridPoint): GridPoint | null {
    let found: GridPoint | null = null;
    const { edges } = this;
    const [minX, maxX] = a.X < b.X ? [a.X, b.X] : [b.X, a.X];
    const [minY, maxY] = a.Y < b.Y ? [a.Y, b.Y] : [b.Y, a.Y];
    this.tree?.search(minX, minY, maxX, maxY, (k) => {
      const [x, y] = [edges[4 * k] as number, edges[4 * k + 1] as number];
      const [dx, dy] = [edges[4 * k + 2] as number, edges[4 * k + 3] as number];
      const [ux, uy] = [b.X - a.X, b.Y - a.Y];
      const along = ux * dy - uy * dx;
      const t = ((x - a.X) * dy - (y - a.Y) * dx) / along;
      const s = ((x - a.X) * uy - (y - a.Y) * ux) / along;
      if (t >= 0 && t <= 1 && s >= 0 && s <= 1) found = { X: a.X + t * ux, Y: a.Y + t * uy };
      return false;
    });
    return found;
  }

  /** Squared distance to the edge reached from the last nearest one by going on to the next or the one before while that is nearer. */
  private nearestFromLast(x: number, y: number): number {
    let best = this.squaredTo(this.last, x, y);
    for (const step of [1, -1]) {
      for (let k = this.last + step; k >= 0 && k < this.count; k += step) {
        const squared = this.squaredTo(k, x, y);
        if (squared >= best) break;
        best = squared;
        this.last = k;
      }
    }
    return best;
  }

  private nearestWithin(x: number, y: number, reach: number): number {
    let best = Infinity;
    this.tree?.search(x - reach, y - reach, x + reach, y + reach, (k) => {
      const squared = this.squaredTo(k, x, y);
      if (squared < best) {
        best = squared;
        this.last = k;
      }
      return false;
    });
    return Math.sqrt(best);
  }

  private squaredTo(k: number, x: number, y: number): number {
    const { edges } = this;
    const fromX = x - (edges[4 * k] as number);
    const fromY = y - (edges[4 * k + 1] as number);
    const dx = edges[4 * k + 2] as number;
    const dy = edges[4 * k + 3] as number;
    const whole = dx * dx + dy * dy;
    const t = whole === 0 ? 0 : Math.min(1, Math.max(0, (fromX * dx + fromY * dy) / whole));
    return (t * dx - fromX) ** 2 + (t * dy - fromY) ** 2;
  }

  private covers(x: number, y: number, reach: number): boolean {
    const { tree } = this;
    if (!tree) return true;
    return (
      x - reach <= tree.minX && y - reach <= tree.minY && x + reach >= tree.maxX && y + reach >= tree.maxY
    );
  }
}
