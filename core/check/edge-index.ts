import Flatbush from 'flatbush';
import type { GridPath, GridPoint } from './grid-polygons';

/** The edges of polygons on the grid in a spatial index, to ask how far a point is from them. Grid units. */
export class EdgeIndex {
  private readonly from: GridPoint[] = [];
  private readonly to: GridPoint[] = [];
  private readonly tree: Flatbush | null;

  constructor(paths: readonly GridPath[]) {
    for (const path of paths) {
      path.forEach((point, i) => {
        this.from.push(point);
        this.to.push(path[(i + 1) % path.length] as GridPoint);
      });
    }
    this.tree = this.from.length === 0 ? null : new Flatbush(this.from.length);
    this.from.forEach((a, i) => {
      const b = this.to[i] as GridPoint;
      this.tree?.add(Math.min(a.X, b.X), Math.min(a.Y, b.Y), Math.max(a.X, b.X), Math.max(a.Y, b.Y));
    });
    this.tree?.finish();
  }

  /** The distance of a point to the nearest edge where it is greater than `than`; null where some edge is as near. */
  distanceBeyond(point: GridPoint, than: number): number | null {
    for (let reach = Math.max(than, 1); ; reach *= 4) {
      const nearest = this.nearestWithin(point, reach);
      if (nearest <= than) return null;
      // Nothing within the box's half width: an edge may still be nearer in a corner of the box than one outside it.
      if (nearest <= reach || this.covers(point, reach)) return nearest;
    }
  }

  private nearestWithin({ X, Y }: GridPoint, reach: number): number {
    let best = Infinity;
    this.tree?.search(X - reach, Y - reach, X + reach, Y + reach, (i) => {
      best = Math.min(best, squaredToEdge(X, Y, this.from[i] as GridPoint, this.to[i] as GridPoint));
      return false;
    });
    return Math.sqrt(best);
  }

  private covers({ X, Y }: GridPoint, reach: number): boolean {
    const { tree } = this;
    if (!tree) return true;
    return (
      X - reach <= tree.minX && Y - reach <= tree.minY && X + reach >= tree.maxX && Y + reach >= tree.maxY
    );
  }
}

function squaredToEdge(x: number, y: number, a: GridPoint, b: GridPoint): number {
  const dx = b.X - a.X;
  const dy = b.Y - a.Y;
  const whole = dx * dx + dy * dy;
  const t = whole === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.X) * dx + (y - a.Y) * dy) / whole));
  return (a.X + t * dx - x) ** 2 + (a.Y + t * dy - y) ** 2;
}
