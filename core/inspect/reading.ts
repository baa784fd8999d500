import type { Point } from '../geometry/contour';
import * as portable from '../geometry/portable-math';

/** Something measured on the picture, by the points that were picked. */
export type Reading =
  | { readonly kind: 'distance' | 'gap'; readonly from: Point; readonly to: Point }
  | { readonly kind: 'angle'; readonly at: Point; readonly first: Point; readonly second: Point }
  | { readonly kind: 'radius'; readonly centre: Point; readonly at: Point };

export interface ReadingValue {
  /** mm; an angle in radians from 0 to π. */
  readonly value: number;
  readonly kind: 'length' | 'angle';
}

/** What a reading comes to; an angle with a leg of no length is 0. */
export function valueOfReading(reading: Reading): ReadingValue {
  switch (reading.kind) {
    case 'distance':
    case 'gap':
      return { value: distance(reading.from, reading.to), kind: 'length' };
    case 'radius':
      return { value: distance(reading.centre, reading.at), kind: 'length' };
    case 'angle': {
      const { at, first, second } = reading;
      const [ax, ay, bx, by] = [first.x - at.x, first.y - at.y, second.x - at.x, second.y - at.y];
      return { value: Math.abs(portable.atan2(ax * by - ay * bx, ax * bx + ay * by)), kind: 'angle' };
    }
  }
}

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);
