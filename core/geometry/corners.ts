import { int, num, type SegmentTable } from './segment-table';
import { tolerance } from './tolerance';

/** What every offset of a contour needs of its segments and corners, whatever its distance. */
export interface Corners {
  /** Unit normals at every segment's start and end, to the right of travel. */
  readonly startX: Float64Array;
  readonly startY: Float64Array;
  readonly endX: Float64Array;
  readonly endY: Float64Array;
  /**
   * tan(turn / 4) of the turn at every segment's end to the segment that follows: the bulge of an arc that rolls round
   * the corner, left positive, ±1 at a cusp; 0 where the chain ends.
   */
  readonly bulge: Float64Array;
}

/** Works from chord and bulge, never from a centre, which is far away where an arc is flat. No trigonometry. O(n). */
export function cornersOf(table: SegmentTable): Corners {
  const { count } = table;
  const startX = new Float64Array(count);
  const startY = new Float64Array(count);
  const endX = new Float64Array(count);
  const endY = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const dx = num(table.x1, i) - num(table.x0, i);
    const dy = num(table.y1, i) - num(table.y0, i);
    const length = Math.sqrt(dx * dx + dy * dy);
    const nx = dy / length;
    const ny = -dx / length;
    const b = num(table.bulge, i);
    // The directions at an arc's ends are the chord's turned by 2 atan(bulge) either way.
    const cos = (1 - b * b) / (1 + b * b);
    const sin = (2 * b) / (1 + b * b);
    startX[i] = nx * cos + ny * sin;
    startY[i] = ny * cos - nx * sin;
    endX[i] = nx * cos - ny * sin;
    endY[i] = ny * cos + nx * sin;
  }
  const bulge = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const k = int(table.next, i);
    if (k < 0) continue;
    const sin = num(endX, i) * num(startY, k) - num(endY, i) * num(startX, k);
    const cos = num(endX, i) * num(startX, k) + num(endY, i) * num(startY, k);
    bulge[i] =
      cos < 0 && Math.abs(sin) < tolerance.tangentAngle ? cuspTurn(table, i, k) : quarterTangent(sin, cos);
  }
  return { startX, startY, endX, endY, bulge };
}

/** tan of a quarter of the angle with that sine and cosine. */
function quarterTangent(sin: number, cos: number): number {
  const half = cos > 0 ? sin / (1 + cos) : (1 - cos) / sin;
  return half / (1 + Math.sqrt(1 + half * half));
}

/**
 * At a cusp the tangents do not tell which way it turns; the curvatures do: the way back lies left of the way there
 * where both bend right on balance.
 */
function cuspTurn(table: SegmentTable, i: number, k: number): number {
  return bend(table, i) + bend(table, k) > 0 ? -1 : 1;
}

function bend(table: SegmentTable, i: number): number {
  const r = num(table.radius, i);
  return r === 0 ? 0 : Math.sign(num(table.bulge, i)) / r;
}
