import Flatbush from 'flatbush';
import { contourBox } from '../geometry/contour-measures';
import { tolerance } from '../geometry/tolerance';
import { coverOf, openedRing, type Cover } from './lies-on';
import type { Ring } from './ring';
import type { Strand } from './strand';
import { chainBox } from './without-duplicates';

/** Tells whether a strand lies on one of the rings: a piece of an edge drawn a second time. */
export function coveredBy(rings: readonly Ring[]): (strand: Strand) => boolean {
  if (rings.length === 0) return () => false;
  const index = new Flatbush(rings.length);
  for (const { contour } of rings) {
    const { minX, minY, maxX, maxY } = contourBox(contour);
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  const covers = new Map<number, Cover>();
  const coverAt = (i: number): Cover => {
    const known = covers.get(i) ?? coverOf(openedRing((rings[i] as Ring).contour), tolerance.duplicate);
    covers.set(i, known);
    return known;
  };
  return ({ chain }) => {
    const { minX, minY, maxX, maxY } = chainBox(chain);
    const d = tolerance.duplicate;
    return index.search(minX - d, minY - d, maxX + d, maxY + d).some((i) => coverAt(i)(chain));
  };
}
