import Flatbush from 'flatbush';
import { tolerance } from '../geometry/tolerance';
import { chainBox } from './chain-box';
import { limits } from './limits';
import { coverOf, openedRing, type Cover } from './lies-on';
import type { Ring } from './ring';
import type { Strand } from './strand';

/**
 * Tells whether a strand lies on one of the rings: a piece of an edge drawn a second time. After very many looks at
 * rings that lie in a heap the answer is no.
 */
export function coveredBy(rings: readonly Ring[]): (strand: Strand) => boolean {
  if (rings.length === 0) return () => false;
  const index = new Flatbush(rings.length);
  for (const { box } of rings) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  const covers = new Map<number, Cover>();
  const coverAt = (i: number): Cover => {
    const known = covers.get(i) ?? coverOf(openedRing((rings[i] as Ring).contour), tolerance.duplicate);
    covers.set(i, known);
    return known;
  };
  let looked = 0;
  return ({ chain }) => {
    if (looked > limits.contacts) return false;
    const { minX, minY, maxX, maxY } = chainBox(chain);
    const d = tolerance.duplicate;
    return index.search(minX - d, minY - d, maxX + d, maxY + d).some((i) => {
      looked++;
      return coverAt(i)(chain);
    });
  };
}
