import type { Point } from '../geometry/contour';
import type { FitCurve } from '../geometry/fit-curve';
import type { SplinePart } from './raw-drawing';

/**
 * A B-spline as smooth curves to fit, cut where a knot is as manifold as the degree (there it may turn a corner).
 * Runs over [knot degree, knot n], which leaves out the ends of an unclamped spline where it is not defined.
 */
export function splineCurves(spline: SplinePart): readonly FitCurve[] {
  const { degree, knots, points } = spline;
  const first = knots[degree] as number;
  const last = knots[points.length] as number;
  const curves: FitCurve[] = [];
  let from = first;
  let breaks: number[] = [];
  for (let i = degree + 1; i <= points.length; i++) {
    const knot = knots[i] as number;
    if (knot === from || knot === breaks[breaks.length - 1]) continue;
    const manifold = manifoldOf(knots, i);
    if (knot < last && manifold < degree) {
      breaks.push(knot);
      continue;
    }
    curves.push(smoothCurve(spline, from, knot, breaks));
    from = knot;
    breaks = [];
    if (knot >= last) break;
  }
  return curves;
}

/** How often a knot stands there; equal knots stand side by side. */
function manifoldOf(knots: readonly number[], i: number): number {
  let [first, last] = [i, i];
  while (knots[first - 1] === knots[i]) first--;
  while (knots[last + 1] === knots[i]) last++;
  return last - first + 1;
}

function smoothCurve(spline: SplinePart, from: number, to: number, breaks: readonly number[]): FitCurve {
  const at = evaluator(spline, from, to);
  return {
    from,
    to,
    breaks,
    point: (t) => at(t).point,
    tangent: (t) => {
      const { way } = at(t);
      if (Math.hypot(way.x, way.y) > 0) return way;
      // Control points on top of each other: the direction is the limit from inside the curve.
      const inside = t + (t < (from + to) / 2 ? 1 : -1) * (to - from) * limitStep;
      const [a, b] = [at(Math.min(t, inside)).point, at(Math.max(t, inside)).point];
      return { x: b.x - a.x || 1, y: b.y - a.y };
    },
  };
}

/** A millionth of the curve: near enough for a direction, far enough for its digits. */
const limitStep = 2 ** -20;

interface PointAndWay {
  readonly point: Point;
  readonly way: Point;
}

/**
 * Point and derivative by de Boor's algorithm on weighted points (Piegl & Tiller, The NURBS Book, ch. 3 and 4): the
 * last two points before the final one span the derivative. Clamped to the knot spans within [from, to], so that a
 * cut is seen from its own side.
 */
function evaluator(spline: SplinePart, from: number, to: number): (t: number) => PointAndWay {
  const { degree, knots, points, weights } = spline;
  const lowest = spanAt(knots, degree, points.length, from);
  const highest = spanBefore(knots, degree, points.length, to);
  const x = new Float64Array(degree + 1);
  const y = new Float64Array(degree + 1);
  const w = new Float64Array(degree + 1);
  const knot = (i: number): number => knots[i] as number;
  return (t) => {
    let span = Math.min(highest, Math.max(lowest, spanAt(knots, degree, points.length, t)));
    while (span > lowest && knot(span) === knot(span + 1)) span--;
    for (let j = 0; j <= degree; j++) {
      const point = points[span - degree + j] as Point;
      const weight = weights[span - degree + j] as number;
      x[j] = point.x * weight;
      y[j] = point.y * weight;
      w[j] = weight;
    }
    let slopeX = 0;
    let slopeY = 0;
    let slopeW = 0;
    for (let r = 1; r <= degree; r++) {
      if (r === degree) {
        const scale = degree / (knot(span + 1) - knot(span));
        slopeX = scale * ((x[degree] as number) - (x[degree - 1] as number));
        slopeY = scale * ((y[degree] as number) - (y[degree - 1] as number));
        slopeW = scale * ((w[degree] as number) - (w[degree - 1] as number));
      }
      for (let j = degree; j >= r; j--) {
        const low = knot(span - degree + j);
        const share = (t - low) / (knot(span + 1 + j - r) - low);
        x[j] = mix(x[j - 1] as number, x[j] as number, share);
        y[j] = mix(y[j - 1] as number, y[j] as number, share);
        w[j] = mix(w[j - 1] as number, w[j] as number, share);
      }
    }
    const weight = w[degree] as number;
    const point = { x: (x[degree] as number) / weight, y: (y[degree] as number) / weight };
    return {
      point,
      way: { x: (slopeX - slopeW * point.x) / weight, y: (slopeY - slopeW * point.y) / weight },
    };
  };
}

const mix = (a: number, b: number, share: number): number => a + (b - a) * share;

/** The last span that begins at or before t. */
function spanAt(knots: readonly number[], degree: number, count: number, t: number): number {
  let low = degree;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((knots[middle] as number) <= t) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The last span that begins before t. */
function spanBefore(knots: readonly number[], degree: number, count: number, t: number): number {
  let span = spanAt(knots, degree, count, t);
  while (span > degree && (knots[span] as number) >= t) span--;
  return span;
}
