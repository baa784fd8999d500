import type { Contour, Region, Vertex } from './contour';
import { nearestPosition } from './loop-position';

/** Of loops the one that runs nearest to the first point of another; null of none. */
export function nearestLoop(loops: Region, to: Contour): Contour | null {
  const at = to[0] as Vertex;
  let nearest: Contour | null = null;
  let least = Infinity;
  for (const loop of loops) {
    const { distance } = nearestPosition(loop, at);
    if (distance >= least) continue;
    least = distance;
    nearest = loop;
  }
  return nearest;
}
