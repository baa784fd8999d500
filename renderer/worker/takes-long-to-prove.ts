import type { Plan } from '../../core/plan';

/** Whether a plan is worth showing before its proofs: with fewer segments they are there before anyone could look. */
export function takesLongToProve({ pairs }: Plan): boolean {
  let segments = 0;
  for (const { die, punch } of pairs) {
    for (const contour of [...die.designed, ...punch.designed]) segments += contour.length;
  }
  return segments > worthShowing;
}

/** A segment takes a fifth of a millisecond to prove: a twentieth of a second, half of what an edit may take to show. */
const worthShowing = 250;
