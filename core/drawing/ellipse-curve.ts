import type { FitCurve } from '../geometry/fit-curve';
import type { EllipsePart } from './raw-drawing';
import * as portable from '../geometry/portable-math';

/** A part of an ellipse as a curve to fit; its tangent never vanishes. */
export function ellipseCurve({ centre, u, v, from, to }: EllipsePart): FitCurve {
  return {
    from,
    to,
    breaks: [],
    point: (t) => ({
      x: centre.x + u.x * portable.cos(t) + v.x * portable.sin(t),
      y: centre.y + u.y * portable.cos(t) + v.y * portable.sin(t),
    }),
    tangent: (t) => ({
      x: v.x * portable.cos(t) - u.x * portable.sin(t),
      y: v.y * portable.cos(t) - u.y * portable.sin(t),
    }),
  };
}
