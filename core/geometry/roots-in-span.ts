import { tolerance } from './tolerance';

/** A polynomial of degree four or less by its coefficients, lowest first. */
export type Polynomial = readonly [number, number, number, number, number];

/**
 * Where a polynomial changes its sign, or touches zero as closely as doubles can tell, for arguments from −1 to 1,
 * ascending. Nothing for a polynomial that is zero within `noise` all along.
 *
 * By its Bernstein coefficients: no change of sign among them means no root, one means exactly one (Descartes' rule),
 * more are halved until they part.
 */
export function rootsInSpan(polynomial: Polynomial, noise: number): readonly number[] {
  const roots: number[] = [];
  part(bernstein(polynomial), -1, 1, polynomial, noise, roots);
  return roots;
}

export const valueOf = ([a, b, c, d, e]: Polynomial, t: number): number =>
  a + t * (b + t * (c + t * (d + t * e)));

/** The least value for arguments from −1 to 1, from below: exact up to degree one, never too high above it. */
export function leastInSpan(polynomial: Polynomial): number {
  return Math.min(...bernstein(polynomial));
}

/** Coefficients over −1 … 1: those of t^k are the symmetric functions of as many −1 and 1. */
function bernstein([a, b, c, d, e]: Polynomial): Polynomial {
  return [a - b + c - d + e, a - b / 2 + d / 2 - e, a - c / 3 + e, a + b / 2 - d / 2 - e, a + b + c + d + e];
}

function part(
  control: Polynomial,
  from: number,
  to: number,
  polynomial: Polynomial,
  noise: number,
  roots: number[],
): void {
  const changes = signChanges(control, noise);
  if (changes === 0) return;
  if (to - from < tolerance.rootWidth) {
    roots.push((from + to) / 2);
    return;
  }
  if (changes === 1 && valueOf(polynomial, from) * valueOf(polynomial, to) < 0) {
    roots.push(bisected(polynomial, from, to));
    return;
  }
  const [low, high] = halved(control);
  const middle = (from + to) / 2;
  part(low, from, middle, polynomial, noise, roots);
  part(high, middle, to, polynomial, noise, roots);
}

/** Coefficients within the noise have no sign. */
function signChanges(control: Polynomial, noise: number): number {
  let changes = 0;
  let last = 0;
  for (const value of control) {
    if (Math.abs(value) <= noise) continue;
    const sign = Math.sign(value);
    if (last !== 0 && sign !== last) changes++;
    last = sign;
  }
  return changes;
}

/** De Casteljau at the middle. */
function halved([a, b, c, d, e]: Polynomial): readonly [Polynomial, Polynomial] {
  const [ab, bc, cd, de] = [(a + b) / 2, (b + c) / 2, (c + d) / 2, (d + e) / 2];
  const [abc, bcd, cde] = [(ab + bc) / 2, (bc + cd) / 2, (cd + de) / 2];
  const [abcd, bcde] = [(abc + bcd) / 2, (bcd + cde) / 2];
  const middle = (abcd + bcde) / 2;
  return [
    [a, ab, abc, abcd, middle],
    [middle, bcde, cde, de, e],
  ];
}

function bisected(polynomial: Polynomial, from: number, to: number): number {
  const rising = valueOf(polynomial, from) < 0;
  let [low, high] = [from, to];
  for (let k = 0; k < doubleDigits; k++) {
    const middle = (low + high) / 2;
    if (valueOf(polynomial, middle) < 0 === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Halvings after which a double cannot be told apart any more. */
const doubleDigits = 54;
