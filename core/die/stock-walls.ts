import type { Contour, Point } from '../geometry/contour';
import { leastDistance } from '../geometry/least-distance';
import { leastWidth } from '../geometry/least-width';
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
 * The narrow places of the piece: each hole's width, each blank's, and the walls between holes and from hole to edge.
 * Exact distances. `widthOf` may remember.
 */
export function stockWalls(
  contours: readonly PieceContour[],
  widthOf: (contour: Contour) => Width | null = (contour) => leastWidth([contour], 'inside'),
): readonly StockWall[] {
  const own = contours.flatMap(({ contourId, use, contour }): StockWall[] => {
    const width = widthOf(contour);
    if (!width) return [];
    const kind = use === 'blank' ? 'blank' : 'hole';
    return [{ kind, contourId, width: width.width, at: middle(width.from, width.to) }];
  });
  return [...own, ...wallsBetween(contours)];
}

const middle = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** For each hole the nearest other hole or its own edge. */
function wallsBetween(contours: readonly PieceContour[]): readonly StockWall[] {
  const indexes = new Map<string, SegmentIndex>(
    contours.map(({ contourId, contour }) => [contourId, indexOf(tableOfRegion([contour]))]),
  );
  return contours
    .filter(({ use }) => use === 'pierce')
    .flatMap((hole, i, holes): StockWall[] => {
      const table = tableOfRegion([hole.contour]);
      const walls = contours.flatMap((other): StockWall[] => {
        const isParent = other.contourId === hole.parentId;
        const isSibling =
          other.use === 'pierce' && holes.indexOf(other) > i && other.parentId === hole.parentId;
        if (!isParent && !isSibling) return [];
        const { distance, at } = leastDistance(table, indexes.get(other.contourId) as SegmentIndex);
        const kind = isParent ? 'hole to edge' : 'between holes';
        return [{ kind, contourId: hole.contourId, width: distance, at }];
      });
      return (['hole to edge', 'between holes'] as const).flatMap((kind) => {
        const [narrowest] = walls.filter((wall) => wall.kind === kind).sort((a, b) => a.width - b.width);
        return narrowest ? [narrowest] : [];
      });
    });
}
