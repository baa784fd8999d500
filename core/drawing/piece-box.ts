import type { Box, Point } from '../geometry/contour';
import { boxAround } from '../geometry/contour-measures';
import { chainBox } from './chain-box';
import type { EllipsePart, Part, Piece } from './raw-drawing';

/**
 * Box around pieces, for showing a person how large the drawing is: exact for lines, arcs and whole ellipses; a spline
 * counts with its control points, which hold it.
 */
export function piecesBox(pieces: readonly Piece[]): Box {
  const shown = pieces.filter(({ hidden, isFilling }) => hidden === null && !isFilling);
  let box = nothing;
  for (const piece of shown.length > 0 ? shown : pieces)
    for (const part of piece.parts) box = boxAround(box, partBox(part));
  return box;
}

const nothing: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

function partBox(part: Part): Box {
  switch (part.type) {
    case 'chain':
      return chainBox(part.chain);
    case 'ellipse':
      return ellipseBox(part);
    case 'spline':
      return part.points.reduce((box, point) => boxAround(box, boxOf(point)), nothing);
  }
}

const boxOf = ({ x, y }: Point): Box => ({ minX: x, minY: y, maxX: x, maxY: y });

function ellipseBox({ centre, u, v, from, to }: EllipsePart): Box {
  const at = (t: number): Box =>
    boxOf({
      x: centre.x + u.x * Math.cos(t) + v.x * Math.sin(t),
      y: centre.y + u.y * Math.cos(t) + v.y * Math.sin(t),
    });
  let box = boxAround(at(from), at(to));
  // x and y are extreme where their derivative vanishes: tan t = v / u, twice a turn each.
  for (const extreme of [Math.atan2(v.x, u.x), Math.atan2(v.y, u.y)]) {
    for (let t = extreme + Math.PI * Math.ceil((from - extreme) / Math.PI); t <= to; t += Math.PI) {
      box = boxAround(box, at(t));
    }
  }
  return box;
}
