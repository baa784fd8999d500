import type { Chain, Vertex } from '../geometry/contour';
import { indexOf, isNearer } from '../geometry/segment-index';
import { pointAlong } from '../geometry/along-segment';
import { squaredDistance, tableOfChain } from '../geometry/segment-table';
import { limits } from './limits';

/** Tells whether another chain lies on this one. */
export type Cover = (probe: Chain) => boolean;

/**
 * A test of whether a chain lies on `chain` everywhere within `distance`. Both consist of lines and arcs, so five
 * points a segment settle it: a line and an arc, or two arcs, that agree there are apart nowhere else by more than a
 * fraction of the distance.
 */
export function coverOf(chain: Chain, distance: number): Cover {
  const table = tableOfChain(chain);
  // Below a handful of segments a plain loop is quicker than an index.
  const index = table.count > fewSegments ? indexOf(table) : null;
  const isNear = (x: number, y: number): boolean => {
    if (index) return isNearer(index, x, y, distance);
    for (let i = 0; i < table.count; i++)
      if (squaredDistance(table, i, x, y) <= distance * distance) return true;
    return false;
  };
  const at = new Float64Array(2);
  return (probe) => {
    const probeTable = tableOfChain(probe);
    for (let i = 0; i < probeTable.count; i++) {
      for (let k = 0; k <= samples; k++) {
        pointAlong(probeTable, i, k / samples, at);
        if (!isNear(at[0] as number, at[1] as number)) return false;
      }
    }
    return true;
  };
}

/**
 * Whether every segment of a ring lies on its other segments: a line drawn there and back. False where so much overlaps
 * that it would take for ever to tell.
 */
export function isAllDoubled(ring: readonly Vertex[], distance: number): boolean {
  const { table, tree } = indexOf(tableOfChain(openedRing(ring)));
  const at = new Float64Array(2);
  let looked = 0;
  for (let i = 0; i < table.count; i++) {
    for (let k = 0; k <= samples; k++) {
      pointAlong(table, i, k / samples, at);
      const [x, y] = at as unknown as [number, number];
      let isNear = false;
      tree?.search(x - distance, y - distance, x + distance, y + distance, (j) => {
        looked++;
        if (!isNear && j !== i) isNear = squaredDistance(table, j, x, y) <= distance * distance;
        return false;
      });
      if (!isNear || looked > limits.overlappingBoxes) return false;
    }
  }
  return true;
}

/** The segments of a ring as a chain that ends where it began. */
export const openedRing = (ring: readonly Vertex[]): Chain => {
  const first = ring[0];
  return first ? [...ring, { x: first.x, y: first.y, bulge: 0 }] : [];
};

const samples = 4;
const fewSegments = 16;
