import type { Point, Region } from '../geometry/contour';
import * as portable from '../geometry/portable-math';

/** A rigid motion in the plane: turned about a point (counter-clockwise, radians), then shifted by dx, dy (mm). */
export interface Motion {
  readonly dx: number;
  readonly dy: number;
  readonly turn: number;
  readonly about: Point;
}

export const noMotion: Motion = { dx: 0, dy: 0, turn: 0, about: { x: 0, y: 0 } };

/** A point where the motion takes it. */
export function movedPoint({ dx, dy, turn, about }: Motion, { x, y }: Point): Point {
  const cos = portable.cos(turn);
  const sin = portable.sin(turn);
  return {
    x: about.x + dx + (x - about.x) * cos - (y - about.y) * sin,
    y: about.y + dy + (x - about.x) * sin + (y - about.y) * cos,
  };
}

/** A region where the motion takes it; the very same without motion, so that its digits stay. */
export function movedRegion(motion: Motion, region: Region): Region {
  if (motion.dx === 0 && motion.dy === 0 && motion.turn === 0) return region;
  return region.map((contour) =>
    contour.map((vertex) => ({ ...movedPoint(motion, vertex), bulge: vertex.bulge })),
  );
}

/** The motion that takes everything back: about the same point. */
export function backMotion({ dx, dy, turn, about }: Motion): Motion {
  const cos = portable.cos(turn);
  const sin = portable.sin(turn);
  return { dx: -(dx * cos + dy * sin), dy: -(dy * cos - dx * sin), turn: -turn, about };
}
