/** A point or direction in space, drawing units. */
export interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** An affine map of space: where the three unit vectors and the origin go. */
export interface Transform {
  readonly x: Vector;
  readonly y: Vector;
  readonly z: Vector;
  readonly origin: Vector;
}

export const vector = (x: number, y: number, z: number): Vector => ({ x, y, z });

export const unmoved: Transform = {
  x: vector(1, 0, 0),
  y: vector(0, 1, 0),
  z: vector(0, 0, 1),
  origin: vector(0, 0, 0),
};

export function moved(by: Transform, point: Vector): Vector {
  if (by === unmoved) return point;
  const way = turned(by, point);
  return vector(way.x + by.origin.x, way.y + by.origin.y, way.z + by.origin.z);
}

/** The map without its shift: for directions. */
export const turned = ({ x, y, z }: Transform, way: Vector): Vector =>
  vector(
    x.x * way.x + y.x * way.y + z.x * way.z,
    x.y * way.x + y.y * way.y + z.y * way.z,
    x.z * way.x + y.z * way.y + z.z * way.z,
  );

/** First `inner`, then `outer`. */
export const chained = (outer: Transform, inner: Transform): Transform => ({
  x: turned(outer, inner.x),
  y: turned(outer, inner.y),
  z: turned(outer, inner.z),
  origin: moved(outer, inner.origin),
});

/**
 * From an entity's own plane to the drawing's space, by its extrusion direction (DXF reference, "Arbitrary axis
 * algorithm"): (0, 0, −1) mirrors x. A zero direction counts as (0, 0, 1).
 */
export function planeOf(extrusion: Vector): Transform {
  const length = Math.hypot(extrusion.x, extrusion.y, extrusion.z);
  if (length === 0) return unmoved;
  const z = vector(extrusion.x / length, extrusion.y / length, extrusion.z / length);
  const nearPole = Math.abs(z.x) < 1 / 64 && Math.abs(z.y) < 1 / 64;
  const x = unit(nearPole ? cross(vector(0, 1, 0), z) : cross(vector(0, 0, 1), z));
  return { x, y: unit(cross(z, x)), z, origin: vector(0, 0, 0) };
}

export const cross = (a: Vector, b: Vector): Vector =>
  vector(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);

function unit(way: Vector): Vector {
  const length = Math.hypot(way.x, way.y, way.z);
  return vector(way.x / length, way.y / length, way.z / length);
}
