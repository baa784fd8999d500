import { alongCarrier, type Site } from './site';
import type { Carrier } from './carrier';
import { rootsInSpan, type Polynomial } from './roots-in-span';
import { tolerance } from './tolerance';

/** Where on a carrier two sites are equally far, t ascending within each equation; nothing where they are so all along. */
export function equallyFar(a: Site, b: Site, carrier: Carrier): readonly number[] {
  if (a.kind === 'line') return b.kind === 'line' ? ofLines(a, b, carrier) : ofLineAndCircle(a, b, carrier);
  return b.kind === 'line' ? ofLineAndCircle(b, a, carrier) : ofCircles(a, b, carrier);
}

/** Where on a carrier a site is at a distance (mm, 0 or more). */
export function atDistance(site: Site, distance: number, carrier: Carrier): readonly number[] {
  const along = alongCarrier(site, carrier);
  if (site.kind === 'line') {
    return [distance, -distance].flatMap((d) => difference(along, scaled(one(carrier), d)));
  }
  return [site.radius + distance, site.radius - distance].flatMap((d) =>
    difference(along, scaled(one(carrier), d * d)),
  );
}

/** Where on a carrier the distance from a site has a greatest or least value. */
export function turningOf(site: Site, carrier: Carrier): readonly number[] {
  // (P / W)' = 0 with W = 1 + w2·t²: P'·W − P·W' loses its cubic terms.
  const [p0, p1, p2] = alongCarrier(site, carrier);
  const { w2 } = carrier;
  const terms: Polynomial = [p1, 2 * (p2 - w2 * p0), -w2 * p1, 0, 0];
  return rootsOf(terms, Math.abs(p0) * w2 + Math.abs(p1) + Math.abs(p2));
}

/** N = N' or N = −N'. */
function ofLines(a: Site, b: Site, carrier: Carrier): readonly number[] {
  const [first, second] = [alongCarrier(a, carrier), alongCarrier(b, carrier)];
  return [...difference(first, second), ...difference(first, scaled(second, -1))];
}

/** √Q = r √W ± N / √W, squared: Q·W = (r·W ± N)². For an end, r = 0, both are one. */
function ofLineAndCircle(line: Site, circle: Site, carrier: Carrier): readonly number[] {
  const radius = circle.kind === 'circle' ? circle.radius : 0;
  const w = one(carrier);
  const n = alongCarrier(line, carrier);
  const left = product(alongCarrier(circle, carrier), w);
  return (radius === 0 ? [1] : [1, -1]).flatMap((sign) => {
    const right = sum(scaled(w, radius), scaled(n, sign));
    return difference(left, product(right, right));
  });
}

/** √Q − r = ±(√Q' − r'), squared twice: (Q − Q' − k²·W)² = 4·k²·W·Q' with k = r − r' or r + r'. */
function ofCircles(a: Site, b: Site, carrier: Carrier): readonly number[] {
  const [ra, rb] = [a.kind === 'circle' ? a.radius : 0, b.kind === 'circle' ? b.radius : 0];
  const w = one(carrier);
  const [qa, qb] = [alongCarrier(a, carrier), alongCarrier(b, carrier)];
  return (ra === 0 || rb === 0 ? [ra - rb] : [ra - rb, ra + rb]).flatMap((k) => {
    const left = sum(sum(qa, scaled(qb, -1)), scaled(w, -k * k));
    const right = scaled(product(w, qb), 4 * k * k);
    const terms = sum(product(left, left), scaled(right, -1));
    const size = largest(qa) + largest(qb) + k * k;
    // Nearly equal radii make two roots that doubles cannot part: the root of the left side lies between them.
    return [...rootsOf(terms, 2 * largest(left) * size + largest(right)), ...rootsOf(left, size)];
  });
}

/** W as a polynomial. */
const one = ({ w2 }: Carrier): Polynomial => [1, 0, w2, 0, 0];

/** Roots of a − b. */
const difference = (a: Polynomial, b: Polynomial): readonly number[] =>
  rootsOf(sum(a, scaled(b, -1)), largest(a) + largest(b));

/** Roots of a sum whose terms were as large as `size`. */
const rootsOf = (terms: Polynomial, size: number): readonly number[] =>
  rootsInSpan(terms, tolerance.cancelled * size);

const largest = (p: Polynomial): number =>
  Math.abs(p[0]) + Math.abs(p[1]) + Math.abs(p[2]) + Math.abs(p[3]) + Math.abs(p[4]);

const sum = (p: Polynomial, q: Polynomial): Polynomial => [
  p[0] + q[0],
  p[1] + q[1],
  p[2] + q[2],
  p[3] + q[3],
  p[4] + q[4],
];

const scaled = (p: Polynomial, by: number): Polynomial => [
  p[0] * by,
  p[1] * by,
  p[2] * by,
  p[3] * by,
  p[4] * by,
];

/** Of two of degree two or less. */
const product = (p: Polynomial, q: Polynomial): Polynomial => [
  p[0] * q[0],
  p[0] * q[1] + p[1] * q[0],
  p[0] * q[2] + p[1] * q[1] + p[2] * q[0],
  p[1] * q[2] + p[2] * q[1],
  p[2] * q[2],
];
