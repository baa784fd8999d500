import type { Groups } from './group-values';
import { valueOf } from './group-values';
import { polylineThrough } from './polyline-shape';
import { incomplete, pointLike, type PieceShape, type ShapeRun } from './shape';
import { vector, type Transform, type Vector } from './transform';

/** Flag of an MLINE (DXF reference, group 71): 2 closed. */
const closedFlag = 2;

/**
 * The lines of an MLINE: each runs through its vertices, moved along the mitre (group 13) by the first parameter of
 * its element there (groups 74 and 41). Caps are part of a style that is not read.
 */
export function mlineShape(groups: Groups, place: Transform): PieceShape {
  const corners = cornersOf(groups);
  if (corners.length === 0) return { reason: incomplete };
  if (corners.length < 2) return { reason: pointLike };
  const closed = ((valueOf(groups, 71) ?? 0) & closedFlag) !== 0;
  const elements = corners.reduce((least, { offsets }) => Math.min(least, offsets.length), Infinity);
  if (elements === 0) return { reason: incomplete };
  const runs: ShapeRun[] = [];
  for (let element = 0; element < elements; element++) {
    const points = corners.map(({ at, mitre, offsets }) => {
      const offset = offsets[element] as number;
      return {
        ...vector(at.x + mitre.x * offset, at.y + mitre.y * offset, at.z + mitre.z * offset),
        bulge: 0,
      };
    });
    const shape = polylineThrough(points, closed, place);
    if ('reason' in shape) return shape;
    runs.push(...shape.runs);
  }
  return { runs, remark: null };
}

interface Corner {
  readonly at: Mutable;
  readonly mitre: Mutable;
  /** Of each element the first of its parameters. */
  readonly offsets: number[];
}

type Mutable = { -readonly [key in keyof Vector]: number };

function cornersOf({ codes, values, from, to }: Groups): readonly Corner[] {
  const corners: Corner[] = [];
  let isFirst = false;
  for (let i = from; i < to; i++) {
    const value = values[i] as number;
    if (codes[i] === 11)
      corners.push({ at: { x: value, y: 0, z: 0 }, mitre: { x: 0, y: 0, z: 0 }, offsets: [] });
    const corner = corners[corners.length - 1];
    if (!corner) continue;
    if (codes[i] === 21) corner.at.y = value;
    else if (codes[i] === 31) corner.at.z = value;
    else if (codes[i] === 13) corner.mitre.x = value;
    else if (codes[i] === 23) corner.mitre.y = value;
    else if (codes[i] === 33) corner.mitre.z = value;
    else if (codes[i] === 74) isFirst = value > 0;
    else if (codes[i] === 41 && isFirst) {
      corner.offsets.push(value);
      isFirst = false;
    }
  }
  return corners;
}
