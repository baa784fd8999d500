import type { FitCurve } from '../geometry/fit-curve';
import type { EllipsePart } from './raw-drawing';

/** A part of an ellipse as a curve to fit; its tangent never vanishes. */
export function ellipseCurve({ centre, u, v, from, to }: EllipsePart): FitCurve {
  return {
    from,
    to,
    breaks: [],
    point: (t) => ({
      x: centre.x + u.x * Math.cos(t) + v.x * Math.sin(t),
      y: centre.y + u.y * Math.cos(t) + v.y * Math.sin(t),
    }),
    tangent: (t) => ({
      x: v.x * Math.cos(t) - u.x * Math.sin(t),
      y: v.y * Math.cos(t) - u.y * Math.sin(t),
    }),
  };
}
