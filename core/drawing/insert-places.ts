import { extrusionOf, pointOf, valueOf, type Groups } from './group-values';
import { chained, planeOf, unmoved, vector, type Transform, type Vector } from './transform';
import * as portable from '../geometry/portable-math';

/**
 * Where an INSERT puts its block, one place for each copy of its array (DXF reference, INSERT): the block's base point
 * on the insertion point, scaled, turned, the copies stepped along the turned axes, all in the plane of its extrusion.
 * The places are made one by one as they are asked for: an array may state a billion.
 */
export function insertPlaces(
  groups: Groups,
  base: Vector,
  outer: Transform,
): Iterable<Transform> | { readonly reason: string } {
  const at = pointOf(groups, 10);
  if (!at) return { reason: 'incomplete: no insertion point' };
  const scaleX = valueOf(groups, 41) ?? 1;
  const scaleY = valueOf(groups, 42) ?? 1;
  // Some programs write 0 for a flat block's third scale.
  const scaleZ = valueOf(groups, 43) || 1;
  if (scaleX === 0 || scaleY === 0) return { reason: 'scaled to nothing' };
  const [cos, sin] = quarterExact(((valueOf(groups, 50) ?? 0) * Math.PI) / 180);
  const turned: Transform = {
    x: vector(cos, sin, 0),
    y: vector(-sin, cos, 0),
    z: vector(0, 0, 1),
    origin: at,
  };
  const scaled: Transform = {
    x: vector(scaleX, 0, 0),
    y: vector(0, scaleY, 0),
    z: vector(0, 0, scaleZ),
    origin: vector(-base.x * scaleX, -base.y * scaleY, -base.z * scaleZ),
  };
  const plane = chained(chained(outer, planeOf(extrusionOf(groups))), turned);
  return steppedPlaces(groups, plane, scaled);
}

function* steppedPlaces(groups: Groups, plane: Transform, scaled: Transform): Iterable<Transform> {
  const columns = Math.max(1, valueOf(groups, 70) ?? 1);
  const rows = Math.max(1, valueOf(groups, 71) ?? 1);
  const [dx, dy] = [valueOf(groups, 44) ?? 0, valueOf(groups, 45) ?? 0];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      yield chained(plane, chained({ ...unmoved, origin: vector(column * dx, row * dy, 0) }, scaled));
    }
  }
}

/** Cosine and sine, exact at quarter turns, so that a part turned by 90° keeps its level edges. */
function quarterExact(angle: number): readonly [number, number] {
  const quarters = Math.round(angle / (Math.PI / 2));
  if (Math.abs(angle - (quarters * Math.PI) / 2) > 2 ** -45)
    return [portable.cos(angle), portable.sin(angle)];
  const turn = ((quarters % 4) + 4) % 4;
  return turn === 0 ? [1, 0] : turn === 1 ? [0, 1] : turn === 2 ? [-1, 0] : [0, -1];
}
