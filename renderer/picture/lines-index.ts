import Flatbush from 'flatbush';
import type { Linework } from '../../core/drawing/linework';
import { segmentBox } from '../../core/geometry/contour-measures';
import type { Box, Vertex } from '../../core/geometry/contour';

/** One segment of the drawing as it came. */
export interface LineSegment {
  readonly from: Vertex;
  readonly to: Vertex;
}

/** All lines that are shown, to be asked for by place; made once for each survey. */
export function segmentsOfLines(lines: readonly Linework[], { minX, minY, maxX, maxY }: Box): LineSegment[] {
  const { tree, segments } = made.get(lines) ?? makeIndex(lines);
  return (tree?.search(minX, minY, maxX, maxY) ?? []).sort((a, b) => a - b).map((i) => segments(i));
}

interface Index {
  readonly tree: Flatbush | null;
  readonly segments: (i: number) => LineSegment;
}

const made = new WeakMap<readonly Linework[], Index>();

function makeIndex(lines: readonly Linework[]): Index {
  const shown = lines.filter(({ hidden, isFilling }) => hidden === null && !isFilling);
  // Where each segment begins: which lines, and which vertex of them.
  const groups: number[] = [];
  const firsts: number[] = [];
  shown.forEach(({ starts }, group) => {
    for (let run = 0; run + 1 < starts.length; run++) {
      for (let v = starts[run] as number; v + 1 < (starts[run + 1] as number); v++) {
        groups.push(group);
        firsts.push(v);
      }
    }
  });
  const vertexAt = (vertices: Float64Array, v: number): Vertex => ({
    x: vertices[3 * v] as number,
    y: vertices[3 * v + 1] as number,
    bulge: vertices[3 * v + 2] as number,
  });
  const segments = (i: number): LineSegment => {
    const { vertices } = shown[groups[i] as number] as Linework;
    const first = firsts[i] as number;
    return { from: vertexAt(vertices, first), to: vertexAt(vertices, first + 1) };
  };
  const tree = groups.length > 0 ? new Flatbush(groups.length) : null;
  for (let i = 0; tree && i < groups.length; i++) {
    const { from, to } = segments(i);
    const { minX, minY, maxX, maxY } = segmentBox(from, to);
    tree.add(minX, minY, maxX, maxY);
  }
  tree?.finish();
  const index = { tree, segments };
  made.set(lines, index);
  return index;
}
