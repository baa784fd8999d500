import type { Contour, Vertex } from '../../core/geometry/contour';
import { contourArea } from '../../core/geometry/contour-measures';
import { isSimple } from './random-contours';

/** The smallest contour found, by leaving out vertices and rounding coordinates, for which a failure persists. */
export function shrinkContour(contour: Contour, fails: (contour: Contour) => boolean): Contour {
  let smallest = contour;
  const take = (candidate: Contour): boolean => {
    if (candidate.length < 2 || contourArea(candidate) <= 0 || !isSimple(candidate) || !fails(candidate))
      return false;
    smallest = candidate;
    return true;
  };
  for (let size = contour.length >> 1; size >= 1; size >>= 1) {
    for (let at = 0; at + size <= smallest.length;) {
      if (!take([...smallest.slice(0, at), ...smallest.slice(at + size)])) at += size;
    }
  }
  for (let places = 1; places <= 12; places++) {
    const round = (value: number): number => Number(value.toFixed(places));
    const rounded = ({ x, y, bulge }: Vertex): Vertex => ({ x: round(x), y: round(y), bulge: round(bulge) });
    if (take(smallest.map(rounded))) break;
  }
  return smallest;
}
