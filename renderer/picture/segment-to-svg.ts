import { arcOf } from '../../core/geometry/contour-measures';
import type { Contour, Vertex } from '../../core/geometry/contour';

/** One segment as SVG path data of its own, y up (the picture flips itself). */
export const segmentToSvg = (from: Vertex, to: Vertex): string =>
  `M${number(from.x)} ${number(from.y)}${drawTo(from, to)}`;

/** A closed contour as SVG path data, y up. */
export function contourToSvg(contour: Contour): string {
  const first = contour[0];
  if (!first) return '';
  const parts = contour.map((from, i) => drawTo(from, contour[i + 1] ?? first));
  return `M${number(first.x)} ${number(first.y)}${parts.join('')}Z`;
}

function drawTo(from: Vertex, to: Vertex): string {
  if (from.bulge === 0) return `L${number(to.x)} ${number(to.y)}`;
  const radius = number(arcOf(from, to).radius);
  // No arc is longer than a half turn, so the large-arc flag is never set.
  return `A${radius} ${radius} 0 0 ${from.bulge > 0 ? 1 : 0} ${number(to.x)} ${number(to.y)}`;
}

/** Nanometres are enough for a picture. */
const number = (value: number): string => String(Number(value.toFixed(6)));
