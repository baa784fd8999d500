import type { Cut } from '../plan';
import { compensationRoom } from '../wire/compensation-room';

/**
 * How far off a pass's planned loop a move may run and still belong to it: rounding to the program's last decimal, and
 * what the contour of a program with offsets is rounder than the wire's path (in a cusp that shows enlarged); but nearer
 * to it than to the passes before and after.
 */
export function besideLoop(passes: Cut['passes'], pass: number, step: number): number {
  const own = passes[pass]?.offset ?? 0;
  const apart = [pass - 1, pass + 1]
    .map((other) => Math.abs((passes[other]?.offset ?? Infinity) - own))
    .filter((distance) => distance > 2 * step);
  return Math.min(4 * (step + compensationRoom(step)), ...apart.map((distance) => distance / 2));
}
