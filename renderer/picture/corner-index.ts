import Flatbush from 'flatbush';
import { cornerPlaces, type CornerPlace } from '../../core/die/corner-places';
import type { Box, Point } from '../../core/geometry/contour';
import type { Plan } from '../../core/plan';
import type { CornerName } from '../state/app-state';

/** A corner of a contour that is cut. */
export interface DrawingCorner {
  readonly name: CornerName;
  readonly place: CornerPlace;
}

/** All corners of the drawing that are cut, contour by contour in its direction; to be asked for by place. */
export interface CornerIndex {
  readonly all: readonly DrawingCorner[];
  cornersIn(box: Box): readonly DrawingCorner[];
}

/** The index of a plan, made once for each plan. */
export function cornerIndex(plan: Plan): CornerIndex {
  const known = made.get(plan);
  if (known) return known;
  const index = makeIndex(plan);
  made.set(plan, index);
  return index;
}

/** The corner nearest to a place, on one contour where one is named; null where there is none at all. */
export function nearestCorner(plan: Plan, { x, y }: Point, contourId?: string): DrawingCorner | null {
  let nearest: DrawingCorner | null = null;
  let least = Infinity;
  for (const corner of cornerIndex(plan).all) {
    if (contourId !== undefined && corner.name.contourId !== contourId) continue;
    const distance = Math.hypot(corner.name.x - x, corner.name.y - y);
    if (distance >= least) continue;
    least = distance;
    nearest = corner;
  }
  return nearest;
}

export const sameCorner = (a: CornerName | null, b: CornerName | null): boolean =>
  a === b || (a !== null && b !== null && a.contourId === b.contourId && a.x === b.x && a.y === b.y);

const made = new WeakMap<Plan, CornerIndex>();

function makeIndex({ drawing, pairs }: Plan): CornerIndex {
  const all = drawing.contours
    .filter(({ id }) => pairs.some(({ contourId }) => contourId === id))
    .flatMap(({ id, contour }) =>
      cornerPlaces(contour).map((place) => ({ name: { contourId: id, ...place.at }, place })),
    );
  if (all.length === 0) return { all, cornersIn: () => [] };
  const tree = new Flatbush(all.length);
  for (const { name } of all) tree.add(name.x, name.y, name.x, name.y);
  tree.finish();
  return {
    all,
    cornersIn: (box) =>
      tree
        .search(box.minX, box.minY, box.maxX, box.maxY)
        .sort((a, b) => a - b)
        .flatMap((i) => all[i] ?? []),
  };
}
