import * as portable from '../geometry/portable-math';

/**
 * The bulge of an arc over a chord whose ends were rounded, so that a flat arc keeps its radius: over a short chord the
 * same bulge would make it smaller or larger by many last decimals, and a control that offsets by itself refuses an
 * inside arc that has become smaller than the offset. From a quarter turn on the bulge itself is the better one: an arc
 * of half a turn has no room to keep its radius.
 */
export function bulgeOver(bulge: number, exactChord: number, roundedChord: number): number {
  if (bulge === 0 || Math.abs(bulge) > quarterTurn) return bulge;
  const halfAngle = portable.asin(
    Math.min(1, portable.sin(2 * portable.atan(Math.abs(bulge))) * (roundedChord / exactChord)),
  );
  return Math.sign(bulge) * portable.tan(halfAngle / 2);
}

const quarterTurn = portable.tan(Math.PI / 8);
