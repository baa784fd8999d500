import type { Contour, Point } from '../geometry/contour';
import { leastDistance } from '../geometry/least-distance';
import { contourBox } from '../geometry/contour-measures';
import { eachNearPair } from '../geometry/near-pairs';
import { indexOf, type SegmentIndex } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import type { Width } from '../geometry/width';

/** A contour of the piece that is blanked or pierced, as drawn. */
export interface PieceContour {
  readonly contourId: string;
  readonly use: 'blank' | 'pierce';
  readonly contour: Contour;
  /** The contour around it; null for an outer one. */
  readonly parentId: string | null;
}

/** A narrow place of the piece itself, mm. */
export interface StockWall {
  readonly kind: 'hole' | 'blank' | 'between holes' | 'hole to edge';
  readonly contourId: string;
  readonly width: number;
  readonly at: Point;
}

/**
 * The narrow places of the piece, those no wider than `within`: each hole's width, each blank's, and the walls between
 * holes and from hole to edge. Exact distances.
 */
export function stockWalls(
  contours: readonly PieceContour[],
  within: number,
  widthOf: (contour: Contour, within: number) => Width | null,
): readonly StockWall[] {
  const own = contours.flatMap(({ contourId, use, contour }): StockWall[] => {
    const width = widthOf(contour, within);
    if (!width) return [];
    const kind = use === 'blank' ? 'blank' : 'hole';
    return [{ kind, contourId, width: width.width, at: middle(width.from, width.to) }];
  });
  return [...own, ...wallsBetween(contours, within)];
}

const middle = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** For each hole the nearest other hole or its own edge: only what lies within reach is measured. */
function wallsBetween(contours: readonly PieceContour[], within: number): readonly StockWall[] {
  const boxes = contours.map(({ contour }) => contourBox(contour));
  const flat = new Float64Array(boxes.flatMap(({ minX, minY, maxX, maxY }) => [minX, minY, maxX, maxY]));
  const indexes = new Map<PieceContour, SegmentIndex>();
  const indexFor = (one: PieceContour): SegmentIndex => {
    const index = indexes.get(one) ?? indexOf(tableOfRegion([one.contour]));
    indexes.set(one, index);
    return index;
  };
  const nearest = new Map<string, StockWall>();
  eachNearPair(flat, contours.length, within, (i, j) => {
    const pair = [contours[i] as PieceContour, contours[j] as PieceContour] as const;
    const wall = wallOf(pair, indexFor);
    if (wall && wall.width <= within) {
      const key = `${wall.contourId}/${wall.kind}`;
      const known = nearest.get(key);
      if (!known || wall.width < known.width) nearest.set(key, wall);
    }
    return false;
  });
  return contours.flatMap(({ contourId }) =>
    (['hole to edge', 'between holes'] as const).flatMap((kind) => nearest.get(`${contourId}/${kind}`) ?? []),
  );
}

/** The wall between a hole and its own edge, or between two holes of one piece; null between others. */
function wallOf(
  [one, other]: readonly [PieceContour, PieceContour],
  indexFor: (contour: PieceContour) => SegmentIndex,
): StockWall | null {
  const isHole = (contour: PieceContour) => contour.use === 'pierce';
  const wall = (hole: PieceContour, to: PieceContour, kind: StockWall['kind']): StockWall => {
    const { distance, at } = leastDistance(tableOfRegion([hole.contour]), indexFor(to));
    return { kind, contourId: hole.contourId, width: distance, at };
  };
  if (isHole(one) && one.parentId === other.contourId) return wall(one, other, 'hole to edge');
  if (isHole(other) && other.parentId === one.contourId) return wall(other, one, 'hole to edge');
  return isHole(one) && isHole(other) && one.parentId === other.parentId
    ? wall(one, other, 'between holes')
    : null;
}
