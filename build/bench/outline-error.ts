import Flatbush from 'flatbush';
import type { Contour, Region, Vertex } from '../../core/geometry/contour';

/**
 * How far an offset is from where it should be: the largest difference between the distance of its points (the ends
 * and middles of all its segments) to the source and the offset, mm. Distances are taken by the plain definitions, with
 * nothing of the geometry that is measured; an index only picks the segments that can be the nearest.
 */
export function outlineError(source: Contour): (offset: Region, distance: number) => number {
  const segments = segmentsOf([source]);
  const tree = new Flatbush(segments.length);
  for (const { from, to } of segments) {
    // No arc exceeds a half turn: it stays within half its chord of the chord's middle plus the half chord.
    const reach = from.bulge === 0 ? 0 : Math.hypot(to.x - from.x, to.y - from.y) / 2;
    tree.add(
      Math.min(from.x, to.x) - reach,
      Math.min(from.y, to.y) - reach,
      Math.max(from.x, to.x) + reach,
      Math.max(from.y, to.y) + reach,
    );
  }
  tree.finish();
  const distanceTo = (x: number, y: number, expected: number): number => {
    for (let reach = expected * 1.01; ; reach *= 2) {
      let nearest = Infinity;
      tree.search(x - reach, y - reach, x + reach, y + reach, (i) => {
        nearest = Math.min(nearest, segmentDistance(segments[i] as Segment, x, y));
        return false;
      });
      if (nearest <= reach || reach > 1e6) return nearest;
    }
  };
  return (offset, distance) => {
    const expected = Math.abs(distance);
    let largest = 0;
    for (const segment of segmentsOf(offset)) {
      for (const [x, y] of [[segment.from.x, segment.from.y] as const, middleOf(segment)]) {
        largest = Math.max(largest, Math.abs(distanceTo(x, y, expected) - expected));
      }
    }
    return largest;
  };
}

interface Segment {
  readonly from: Vertex;
  readonly to: Vertex;
}

const segmentsOf = (region: Region): Segment[] =>
  region.flatMap((loop) => loop.map((from, i) => ({ from, to: loop[(i + 1) % loop.length] as Vertex })));

/** The middle of an arc lies beside its chord's middle by bulge · chord / 2, right of travel where it turns left. */
function middleOf({ from, to }: Segment): readonly [number, number] {
  const half = from.bulge / 2;
  return [(from.x + to.x) / 2 + half * (to.y - from.y), (from.y + to.y) / 2 - half * (to.x - from.x)];
}

function segmentDistance({ from, to }: Segment, x: number, y: number): number {
  const ends = Math.min(Math.hypot(x - from.x, y - from.y), Math.hypot(x - to.x, y - to.y));
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const b = from.bulge;
  if (b === 0) {
    const t = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy);
    return t > 0 && t < 1 ? Math.abs((x - from.x) * dy - (y - from.y) * dx) / Math.hypot(dx, dy) : ends;
  }
  const lift = (1 - b * b) / (4 * b);
  const cx = (from.x + to.x) / 2 - lift * dy;
  const cy = (from.y + to.y) / 2 + lift * dx;
  const start = Math.atan2(from.y - cy, from.x - cx);
  const turned = (Math.atan2(y - cy, x - cx) - start) * Math.sign(b);
  const turn = ((turned % fullTurn) + fullTurn) % fullTurn;
  if (turn > 4 * Math.atan(Math.abs(b))) return ends;
  return Math.min(ends, Math.abs(Math.hypot(x - cx, y - cy) - Math.hypot(from.x - cx, from.y - cy)));
}

const fullTurn = 2 * Math.PI;
