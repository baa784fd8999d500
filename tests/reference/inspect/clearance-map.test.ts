import { describe, expect, test } from 'vitest';
import { clearanceMap, type ClearanceMap } from '../../../core/inspect/clearance-map';
import { movedRegion } from '../../../core/inspect/motion';
import type { Region } from '../../../core/geometry/contour';
import { circle, roundedRectangle, square } from '../../support/shapes';

// Sources: closed forms of elementary geometry, derived beside each case; the complete elliptic integral by the
// arithmetic-geometric mean (Abramowitz & Stegun, 17.6).

const mapOf = (punch: Region, die: Region, wanted: number, tolerance = wanted / 10): ClearanceMap => {
  const map = clearanceMap(punch, die, wanted, tolerance);
  if (!map) throw new Error('no map');
  return map;
};

const shifted = (region: Region, dx: number, dy: number, turn = 0) =>
  movedRegion({ dx, dy, turn, about: { x: 0, y: 0 } }, region);

describe('eccentric circles, r 5 in R 5.05, e 0.02', () => {
  const [r, R, e] = [5, 5.05, 0.02];
  const map = mapOf([circle(r, e)], [circle(R)], R - r, 0.01);

  test('least R − r − e, greatest R − r + e, where the centres line up', () => {
    expect(map.least.clearance).toBeCloseTo(R - r - e, 12);
    expect(map.greatest.clearance).toBeCloseTo(R - r + e, 12);
    expect(map.least.at.x).toBeCloseTo(r + e, 12);
    expect(map.greatest.at.x).toBeCloseTo(e - r, 12);
    expect(map.least.foot.x).toBeCloseTo(R, 12);
  });

  test('mean R − (2 / π)(r + e)·E(k), k² = 4re / (r + e)²', () => {
    const mean = R - (2 / Math.PI) * (r + e) * ellipticE((4 * r * e) / (r + e) ** 2);
    expect(Math.abs(map.mean - mean)).toBeLessThan(1e-6);
  });

  test('length outside: where √(r² + e² + 2re·cos θ) leaves R − c ∓ tolerance', () => {
    const angleAt = (clearance: number) => Math.acos(((R - clearance) ** 2 - r * r - e * e) / (2 * r * e));
    // Tight from −a to a, wide beyond ±b.
    const [a, b] = [angleAt(0.04), angleAt(0.06)];
    expect(map.outside).toBeCloseTo(r * (2 * a + 2 * (Math.PI - b)), 9);
    const bands = new Set(map.stretches.map(({ band }) => band));
    expect(bands).toEqual(new Set(['tight', 'within', 'wide']));
  });

  test('the perimeter is 2πr and the stretches fill it', () => {
    expect(map.perimeter).toBeCloseTo(2 * Math.PI * r, 10);
    expect(map.stretches.reduce((sum, { from, to }) => sum + to - from, 0)).toBeCloseTo(map.perimeter, 10);
  });
});

test('a sharp punch corner in a fillet R keeps R − √2·(R − c)', () => {
  // The fillet's centre is R − c inside both edges of the punch; the corner is √2 times that away from it.
  const [c, R] = [0.05, 0.15];
  const die = roundedRectangle(20, 10, R);
  const punch = square(1).map(({ x, y }) => ({ x: c + x * (20 - 2 * c), y: c + y * (10 - 2 * c), bulge: 0 }));
  const map = mapOf([punch], [die], c);
  expect(map.least.clearance).toBeCloseTo(R - Math.SQRT2 * (R - c), 12);
  expect(map.greatest.clearance).toBeCloseTo(c, 12);
  // Nearer than c only beside the fillet: where √((R − c)² + s²) > R − c … the whole of both edges' last R − c.
  const tight = map.stretches.filter(({ band }) => band === 'tight');
  expect(tight.length).toBeGreaterThanOrEqual(4);
  // Limit 0.9 c: √((R − c)² + s²) = R − 0.9 c.
  const s = Math.sqrt((R - 0.9 * c) ** 2 - (R - c) ** 2);
  expect(map.outside).toBeCloseTo(8 * (R - c - s), 9);
});

test('a square out of place: edges keep c ± shift, and its mean is c less the corners’ share', () => {
  const [a, c, dx] = [10, 0.05, 0.03];
  const map = mapOf(shifted([square(a)], dx, 0), [square(a + 2 * c, -c, -c)], c);
  expect(map.least.clearance).toBeCloseTo(c - dx, 12);
  expect(map.greatest.clearance).toBeCloseTo(c + dx, 12);
  // Upper and lower edge: c, but c − dx + s at a length s from the right end (s ≤ dx); left edge c + dx, its ends c + s.
  const level = 2 * (a * c - (dx * dx) / 2);
  const left = a * (c + dx) - dx * dx;
  expect(map.mean).toBeCloseTo((level + left + a * (c - dx)) / (4 * a), 9);
});

test('punch and die that overlap: negative, by how far the punch reaches into the die', () => {
  const map = mapOf(shifted([square(10)], 0.08, 0), [square(10.1, -0.05, -0.05)], 0.05);
  expect(map.least.clearance).toBeCloseTo(-0.03, 12);
  const contact = map.stretches.filter(({ band }) => band === 'contact');
  // The right edge and the last 0.03 of the edges beside it.
  expect(contact.reduce((sum, { from, to }) => sum + to - from, 0)).toBeCloseTo(10.06, 9);
});

test('a turn by φ about the middle: an edge keeps c ∓ x·sin φ', () => {
  const [a, c, turn] = [10, 0.05, 0.002];
  const punch = shifted([square(a, -a / 2, -a / 2)], 0, 0, turn);
  const map = mapOf(punch, [square(a + 2 * c, -a / 2 - c, -a / 2 - c)], c);
  // A corner comes to (a / 2)(cos φ + sin φ) along one axis.
  expect(map.least.clearance).toBeCloseTo(a / 2 + c - (a / 2) * (Math.cos(turn) + Math.sin(turn)), 12);
});

test('several loops: a punch with a pocket in a die with a post', () => {
  const ring = (outer: number, inner: number): Region => [
    circle(outer),
    circle(inner)
      .toReversed()
      .map((v) => v),
  ];
  const map = mapOf(ring(5, 3.04), ring(5.05, 3), 0.05, 0.005);
  expect(map.loops).toHaveLength(3);
  expect(map.loops[1]).toBeCloseTo(10 * Math.PI, 9);
  expect(map.least.clearance).toBeCloseTo(0.04, 12);
  expect(map.greatest.clearance).toBeCloseTo(0.05, 12);
});

/** E(m), m = k²: complete elliptic integral of the second kind by the arithmetic-geometric mean. */
function ellipticE(m: number): number {
  let [a, b, c] = [1, Math.sqrt(1 - m), Math.sqrt(m)];
  let sum = (c * c) / 2;
  for (let power = 1; Math.abs(c) > 1e-16; power *= 2) {
    [a, b, c] = [(a + b) / 2, Math.sqrt(a * b), (a - b) / 2];
    sum += power * c * c;
  }
  return (Math.PI / (2 * a)) * (1 - sum);
}
