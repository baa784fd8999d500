import type { Contour, Point, Region } from './contour';
import * as portable from './portable-math';

/** A turn about the origin (radians, counter-clockwise), then a move. */
export interface Motion extends Point {
  readonly turn: number;
}

/** A contour turned and moved; arcs keep their bulge. */
export function movedContour(contour: Contour, { turn, x, y }: Motion): Contour {
  const cos = turn === 0 ? 1 : portable.cos(turn);
  const sin = turn === 0 ? 0 : portable.sin(turn);
  return contour.map((v) => ({
    x: v.x * cos - v.y * sin + x,
    y: v.x * sin + v.y * cos + y,
    bulge: v.bulge,
  }));
}

export const movedRegion = (region: Region, motion: Motion): Region =>
  region.map((contour) => movedContour(contour, motion));

export function movedPoint(point: Point, { turn, x, y }: Motion): Point {
  const cos = portable.cos(turn);
  const sin = portable.sin(turn);
  return { x: point.x * cos - point.y * sin + x, y: point.x * sin + point.y * cos + y };
}

/** The motion that undoes a motion. */
export function undoneMotion({ turn, x, y }: Motion): Motion {
  const back = movedPoint({ x: -x, y: -y }, { turn: -turn, x: 0, y: 0 });
  return { turn: -turn, x: back.x, y: back.y };
}
