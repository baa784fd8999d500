import Flatbush from 'flatbush';
import type { Chain, Vertex } from '../geometry/contour';
import {
  pointAlong,
  segmentBoxes,
  squaredDistance,
  tableOfChain,
  type SegmentTable,
} from '../geometry/segment-table';

/** Tells whether another chain lies on this one. */
export type Cover = (probe: Chain) => boolean;

/**
 * A test of whether a chain lies on `chain` everywhere within `distance`. Both consist of lines and arcs, so five
 * points a segment settle it: a line and an arc, or two arcs, that agree there are apart nowhere else by more than a
 * fraction of the distance.
 */
export function coverOf(chain: Chain, distance: number): Cover {
  const table = tableOfChain(chain);
  const index = indexOf(table);
  const isNear = (x: number, y: number): boolean => {
    const near = index
      ? index.search(x - distance, y - distance, x + distance, y + distance)
      : Array.from({ length: table.count }, (_, i) => i);
    return near.some((i) => squaredDistance(table, i, x, y) <= distance * distance);
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

/** The segments of a ring as a chain that ends where it began. */
export const openedRing = (ring: readonly Vertex[]): Chain => {
  const first = ring[0];
  return first ? [...ring, { x: first.x, y: first.y, bulge: 0 }] : [];
};

const samples = 4;
/** Below this many segments a plain loop is quicker than an index. */
const fewSegments = 16;

function indexOf(table: SegmentTable): Flatbush | null {
  if (table.count <= fewSegments) return null;
  const boxes = segmentBoxes(table);
  const index = new Flatbush(table.count);
  for (let i = 0; i < table.count; i++) {
    index.add(boxes[4 * i] as number, boxes[4 * i + 1] as number, boxes[4 * i + 2], boxes[4 * i + 3]);
  }
  index.finish();
  return index;
}
