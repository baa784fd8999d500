import type { EllipsePart } from './raw-drawing';
import type { SegmentPart } from './shape';
import { moved, turned, vector, type Transform, type Vector } from './transform';
import * as portable from '../geometry/portable-math';

/**
 * One polyline segment, given in its own plane, as parts in the drawing's: a line, an arc cut into pieces of at most a
 * half turn, or a part of an ellipse where the placing stretches it. Bulge = tan(angle / 4) (DXF reference, group 42).
 */
export function bulgeParts(
  from: Vector,
  to: Vector,
  bulge: number,
  place: Transform,
): readonly (SegmentPart | EllipsePart)[] {
  const chordX = to.x - from.x;
  const chordY = to.y - from.y;
  if (bulge === 0 || (chordX === 0 && chordY === 0))
    return [flatSegment(moved(place, from), moved(place, to))];
  if (Math.abs(bulge) > 1) {
    // Over a half turn: two arcs of half the angle. The middle lies bulge · chord / 2 to the right of the chord's middle.
    const middle = vector(
      (from.x + to.x) / 2 + (bulge / 2) * chordY,
      (from.y + to.y) / 2 - (bulge / 2) * chordX,
      from.z,
    );
    const half = portable.tan(portable.atan(bulge) / 2);
    return [...bulgeParts(from, middle, half, place), ...bulgeParts(middle, to, half, place)];
  }
  const mirrored = keepsCircles(place);
  if (mirrored !== 0) {
    const [a, b] = [moved(place, from), moved(place, to)];
    return [{ type: 'segment', from: { x: a.x, y: a.y }, to: { x: b.x, y: b.y }, bulge: bulge * mirrored }];
  }
  return [stretchedArc(from, to, bulge, place)];
}

export const flatSegment = (a: Vector, b: Vector): SegmentPart => ({
  type: 'segment',
  from: { x: a.x, y: a.y },
  to: { x: b.x, y: b.y },
  bulge: 0,
});

/** 1 where the map turns circles of its plane into circles, −1 where it also mirrors them, 0 where it stretches them. */
function keepsCircles(place: Transform): -1 | 0 | 1 {
  const { x, y } = place;
  const rounding = 2 ** -40;
  const [lengthX, lengthY] = [Math.hypot(x.x, x.y), Math.hypot(y.x, y.y)];
  const square = Math.abs(x.x * y.x + x.y * y.y) <= lengthX * lengthY * rounding;
  if (!square || Math.abs(lengthX - lengthY) > lengthX * rounding) return 0;
  return x.x * y.y - x.y * y.x > 0 ? 1 : -1;
}

function stretchedArc(from: Vector, to: Vector, bulge: number, place: Transform): EllipsePart {
  const side = (1 - bulge * bulge) / (4 * bulge);
  const centre = vector(
    (from.x + to.x) / 2 - side * (to.y - from.y),
    (from.y + to.y) / 2 + side * (to.x - from.x),
    from.z,
  );
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const start = portable.atan2(from.y - centre.y, from.x - centre.x);
  const angle = 4 * portable.atan(bulge);
  // A clockwise arc runs through rising parameters of the ellipse with its second half-diameter turned over.
  const sense = Math.sign(bulge);
  const middle = moved(place, centre);
  const u = turned(place, vector(radius, 0, 0));
  const v = turned(place, vector(0, radius * sense, 0));
  return {
    type: 'ellipse',
    centre: { x: middle.x, y: middle.y },
    u: { x: u.x, y: u.y },
    v: { x: v.x, y: v.y },
    from: start * sense,
    to: start * sense + Math.abs(angle),
  };
}
