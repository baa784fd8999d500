import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain, Vertex } from '../../../core/geometry/contour';
import { chainLength } from '../../../core/geometry/contour-measures';
import { fitArcs } from '../../../core/geometry/fit-arcs';
import type { FitCurve } from '../../../core/geometry/fit-curve';
import { squaredDistance, tableOfChain } from '../../../core/geometry/segment-table';

const ellipse = (a: number, b: number, to = 2 * Math.PI): FitCurve => ({
  from: 0,
  to,
  breaks: [],
  point: (t) => ({ x: a * Math.cos(t), y: b * Math.sin(t) }),
  tangent: (t) => ({ x: -a * Math.sin(t), y: b * Math.cos(t) }),
});

/** Largest distance from the curve to the chain at many points: brute force, nothing in common with the fit's own search. */
function bruteDeviation(curve: FitCurve, chain: Chain, samples = 20_000): number {
  const table = tableOfChain(chain);
  let largest = 0;
  for (let k = 0; k <= samples; k++) {
    const { x, y } = curve.point(curve.from + ((curve.to - curve.from) * k) / samples);
    let nearest = Infinity;
    for (let i = 0; i < table.count; i++) nearest = Math.min(nearest, squaredDistance(table, i, x, y));
    largest = Math.max(largest, nearest);
  }
  return Math.sqrt(largest);
}

/** What measuring by centre and radius cannot tell: two units in the last place of the largest radius, mm. */
function rounding(chain: Chain): number {
  return Math.max(...tableOfChain(chain).radius) * 2 ** -51;
}

/** Largest change of direction where two pieces meet, radians. */
function largestCorner(chain: Chain): number {
  const way = (from: Vertex, to: Vertex, atEnd: boolean): number =>
    Math.atan2(to.y - from.y, to.x - from.x) + (atEnd ? 2 : -2) * Math.atan(from.bulge);
  let largest = 0;
  for (let i = 1; i + 1 < chain.length; i++) {
    const [a, b, c] = chain.slice(i - 1, i + 2) as [Vertex, Vertex, Vertex];
    const turn = way(b, c, false) - way(a, b, true);
    largest = Math.max(largest, Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))));
  }
  return largest;
}

describe('fitArcs', () => {
  it.each([
    [20, 10, 0.0005],
    [20, 10, 0.05],
    [10, 0.5, 0.0005],
    [100, 99.99, 0.0005],
  ])(
    'ellipse %d × %d at %d: within tolerance, tangent, and the error reported is the true one',
    (a, b, limit) => {
      const curve = ellipse(a, b);
      const { chain, largestError } = fitArcs(curve, limit);
      expect(largestError).toBeLessThanOrEqual(limit);
      const brute = bruteDeviation(curve, chain);
      // Samples can only fall short of the true maximum, and 20,000 of them hardly do.
      expect(brute).toBeLessThanOrEqual(largestError + 1e-9);
      expect(brute).toBeGreaterThan(largestError * 0.999);
      expect(largestCorner(chain)).toBeLessThan(1e-7);
      expect(Math.max(...chain.map(({ bulge }) => Math.abs(bulge)))).toBeLessThanOrEqual(1);
    },
  );

  it('needs few arcs: their number grows with the cube root of the accuracy', () => {
    const coarse = fitArcs(ellipse(20, 10), 0.064).chain.length;
    const fine = fitArcs(ellipse(20, 10), 0.000064).chain.length;
    expect(fine / coarse).toBeLessThan(12);
    expect(fine).toBeLessThan(140);
  });

  // Over a span of length L the curvature changes by κ'·L. With e'' = κ'·(s − L/2) ± a on its halves and e = e' = 0 at
  // both ends, a pair of tangent arcs of equal length is off by at most κ'·L³/324 (at a third of the span); so a curve
  // takes no fewer than 2·∫ (κ' / 324 ε)^(1/3) ds arcs in such pairs, as ε goes to 0. (Own derivation.)
  it.each([
    [20, 10, 0.0005],
    [20, 10, 0.00002],
    [10, 2, 0.0005],
    [300, 200, 0.0005],
  ])('ellipse %d × %d at %d takes hardly more arcs than pairs of tangent arcs can do with', (a, b, limit) => {
    const steps = 100_000;
    let bound = 0;
    for (let k = 0; k < steps; k++) {
      const t = (2 * Math.PI * (k + 1 / 2)) / steps;
      const speed = Math.hypot(a * Math.sin(t), b * Math.cos(t));
      // κ = a·b / speed³, so dκ/dt = −3·a·b·(a² − b²)·sin t·cos t / speed⁵, and κ' = dκ/dt / speed.
      const slope = (3 * a * b * (a * a - b * b) * Math.abs(Math.sin(t) * Math.cos(t))) / speed ** 6;
      bound += 2 * Math.cbrt(slope / (324 * limit)) * speed * ((2 * Math.PI) / steps);
    }
    const arcs = fitArcs(ellipse(a, b), limit).chain.length - 1;
    expect(arcs).toBeLessThan(1.08 * bound + 2);
  });

  it('has the length of the ellipse (complete elliptic integral by the arithmetic-geometric mean)', () => {
    const { chain } = fitArcs(ellipse(20, 10), 0.0005);
    expect(chainLength(chain)).toBeCloseTo(ellipseLength(20, 10), 3);
  });

  it('a circle comes out as three arcs, a straight curve as one line, without error', () => {
    const circle = fitArcs(ellipse(7, 7), 0.0005);
    expect(circle.chain).toHaveLength(4);
    expect(circle.largestError).toBeLessThan(1e-9);
    const straight: FitCurve = {
      from: 0,
      to: 1,
      breaks: [],
      point: (t) => ({ x: 10 * t * t * t + t, y: 5 * t * t * t + t / 2 }),
      tangent: (t) => ({ x: 30 * t * t + 1, y: 15 * t * t + 1 / 2 }),
    };
    const line = fitArcs(straight, 0.0005);
    expect(line.chain).toEqual([
      { x: 0, y: 0, bulge: 0 },
      { x: 11, y: 5.5, bulge: 0 },
    ]);
    expect(line.largestError).toBeLessThan(1e-12);
  });

  it('passes an inflection and a cusp and ends where the curve ends', () => {
    const wave: FitCurve = {
      from: 0,
      to: 10,
      breaks: [],
      point: (t) => ({ x: t, y: Math.sin(t) }),
      tangent: (t) => ({ x: 1, y: Math.cos(t) }),
    };
    const cusp: FitCurve = {
      from: -1,
      to: 1,
      breaks: [],
      point: (t) => ({ x: t * t, y: t * t * t }),
      tangent: (t) => (t === 0 ? { x: 1, y: 0 } : { x: 2 * t, y: 3 * t * t }),
    };
    for (const curve of [wave, cusp]) {
      const { chain, largestError } = fitArcs(curve, 0.0005);
      expect(largestError).toBeLessThanOrEqual(0.0005);
      expect(bruteDeviation(curve, chain, 4000)).toBeLessThanOrEqual(0.0005 + 1e-9);
      expect(chain[chain.length - 1]).toMatchObject(curve.point(curve.to));
    }
  });

  it('random cubic curves: never farther than the error it reports, never more than the tolerance', () => {
    const coordinate = fc.double({ min: -20, max: 20, noNaN: true });
    const point = fc.tuple(coordinate, coordinate);
    fc.assert(
      fc.property(point, point, point, (b, c, d) => {
        const polynomial = (t: number, k: 0 | 1) =>
          3 * b[k] * t * (1 - t) ** 2 + 3 * c[k] * t * t * (1 - t) + d[k] * t ** 3;
        const slope = (t: number, k: 0 | 1) =>
          3 * (b[k] * (1 - t) ** 2 + 2 * (c[k] - b[k]) * t * (1 - t) + (d[k] - c[k]) * t * t);
        const curve: FitCurve = {
          from: 0,
          to: 1,
          breaks: [],
          point: (t) => ({ x: polynomial(t, 0), y: polynomial(t, 1) }),
          tangent: (t) => ({ x: slope(t, 0), y: slope(t, 1) }),
        };
        fc.pre(Math.hypot(...b) > 0.1 && Math.hypot(d[0] - c[0], d[1] - c[1]) > 0.1);
        const { chain, largestError } = fitArcs(curve, 0.0005);
        expect(largestError).toBeLessThanOrEqual(0.0005);
        expect(bruteDeviation(curve, chain, 1000)).toBeLessThanOrEqual(largestError + 1e-9 + rounding(chain));
      }),
      { numRuns: 60 },
    );
  });
});

/** Perimeter of an ellipse: 4 a E(e), E by the AGM (NIST Digital Library of Mathematical Functions, 19.8.6). */
function ellipseLength(a: number, b: number): number {
  let [x, y] = [1, b / a];
  let [sum, power] = [1 - (b / a) ** 2, 1];
  let total = sum / 2;
  while (Math.abs(x - y) > 1e-15) {
    sum = ((x - y) / 2) ** 2;
    [x, y] = [(x + y) / 2, Math.sqrt(x * y)];
    total += power * sum;
    power *= 2;
  }
  return ((4 * a * Math.PI) / (2 * x)) * (1 - total);
}
