import { num } from './segment-table';
import { tolerance } from './tolerance';

/** Adds a point to x, y pairs unless it is there already; returns how many there are then. */
export function addMeeting(out: Float64Array, count: number, x: number, y: number): number {
  for (let k = 0; k < count; k++) {
    const dx = num(out, 2 * k) - x;
    const dy = num(out, 2 * k + 1) - y;
    if (dx * dx + dy * dy <= tolerance.samePoint * tolerance.samePoint) return count;
  }
  out[2 * count] = x;
  out[2 * count + 1] = y;
  return count + 1;
}
