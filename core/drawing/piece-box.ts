import type { Box } from '../geometry/contour';
import { GrowingBox } from './chain-box';
import type { EllipsePart, Part, Piece } from './raw-drawing';
import * as portable from '../geometry/portable-math';

/**
 * Box around pieces, for showing a person how large the drawing is: exact for lines, arcs and whole ellipses; a spline
 * counts with its control points, which hold it. Inside out where there are none.
 */
export function piecesBox(pieces: readonly Piece[]): Box {
  const shown = pieces.filter(({ hidden, isFilling }) => hidden === null && !isFilling);
  const box = new GrowingBox();
  for (const { parts } of shown.length > 0 ? shown : pieces) for (const part of parts) addPart(box, part);
  const { minX, minY, maxX, maxY } = box;
  return { minX, minY, maxX, maxY };
}

function addPart(box: GrowingBox, part: Part): void {
  if (part.type === 'chain') box.addChain(part.chain, part.chain.length - 1);
  else if (part.type === 'ellipse') addEllipse(box, part);
  else for (const { x, y } of part.points) box.add(x, y);
}

function addEllipse(box: GrowingBox, { centre, u, v, from, to }: EllipsePart): void {
  const add = (t: number): unknown =>
    box.add(
      centre.x + u.x * portable.cos(t) + v.x * portable.sin(t),
      centre.y + u.y * portable.cos(t) + v.y * portable.sin(t),
    );
  add(from);
  add(to);
  // x and y are extreme where their derivative vanishes: tan t = v / u, twice a turn each.
  for (const extreme of [portable.atan2(v.x, u.x), portable.atan2(v.y, u.y)])
    for (let t = extreme + Math.PI * Math.ceil((from - extreme) / Math.PI); t <= to; t += Math.PI) add(t);
}
