import type { Box, Region } from '../geometry/contour';
import { boxAround, contourBox, eachSegment } from '../geometry/contour-measures';
import { upToTenth } from '../rounded-length';
import { mmPerInch } from '../units';
import { blockByStock, blockFactors, openingToEdge, sharpOpeningToEdge } from './die-rules';
import * as portable from '../geometry/portable-math';

export interface BlockThickness {
  /** By the force of the cut: K·∛(F in kgf), mm, up to the next tenth. */
  readonly byForce: number;
  /** By the stock's thickness, mm. */
  readonly byStock: number;
  /** The larger. */
  readonly least: number;
}

/** Standard gravity (ISO 80000-3): N in a kilogram-force. */
const newtonPerKgf = 9.80665;

/** Least thickness of the die block for a cut of `length` mm that takes `force` N, in stock of `thickness` mm. */
export function dieBlockThickness(force: number, length: number, thickness: number): BlockThickness {
  const factor = blockFactors.find(({ upTo }) => length <= upTo)?.factor ?? 1;
  const byForce = upToTenth(factor * portable.cbrt(force / newtonPerKgf));
  const inch = blockByStock.find(({ upToInch }) => thickness <= upToInch * mmPerInch)?.blockInch ?? 0;
  const byStock = inch * mmPerInch;
  return { byForce, byStock, least: Math.max(byForce, byStock) };
}

/** Whether an opening has corners, from which a block cracks: bends of more than a twentieth of a degree. */
export function hasSharpCorners(region: Region): boolean {
  return region.some((contour) => {
    let before: number | null = null;
    let sharp = false;
    const turnInto = (arriving: number, leaving: number) => {
      const turn = portable.atan2(portable.sin(leaving - arriving), portable.cos(leaving - arriving));
      if (Math.abs(turn) > cornerTurn) sharp = true;
    };
    let first: number | null = null;
    eachSegment(contour, (from, to) => {
      const chord = portable.atan2(to.y - from.y, to.x - from.x);
      const leaving = chord - 2 * portable.atan(from.bulge);
      if (before !== null) turnInto(before, leaving);
      first ??= leaving;
      before = chord + 2 * portable.atan(from.bulge);
    });
    if (before !== null && first !== null) turnInto(before, first);
    return sharp;
  });
}

/** The same bend that divides smooth from sharp in the checks. */
const cornerTurn = 0.001;

/** From an opening to the block's edge, mm: 1.25 times the block's thickness, 1.5 times where corners are sharp. */
export const edgeDistance = (openings: Region, blockThickness: number): number =>
  (hasSharpCorners(openings) ? sharpOpeningToEdge : openingToEdge).value * blockThickness;

/** The smallest block around openings, with a distance left on each side, rounded up to whole mm about their middle. */
export function blockAround(openings: Region, distance: number): Box | null {
  const boxes = openings.map(contourBox);
  const [first] = boxes;
  if (!first) return null;
  const box = boxes.reduce(boxAround, first);
  const half = (size: number) => Math.ceil(size + 2 * distance - 1 / 1000) / 2;
  const x = (box.minX + box.maxX) / 2;
  const y = (box.minY + box.maxY) / 2;
  const halfWidth = half(box.maxX - box.minX);
  const halfHeight = half(box.maxY - box.minY);
  return { minX: x - halfWidth, minY: y - halfHeight, maxX: x + halfWidth, maxY: y + halfHeight };
}
