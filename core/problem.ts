/** Why something cannot go on, in words for the person at the screen: what is wrong, where, what to do. */
export interface Problem {
  /** Stable name for programs and tests, e.g. `drawing-empty`. */
  readonly code: string;
  /** One sentence: what is wrong. */
  readonly what: string;
  /** Where: a line of the file, a layer, a field of the job; empty where there is no place. */
  readonly where: string;
  /** One sentence: what the user can do. */
  readonly whatToDo: string;
}

/** A value, or the problem that kept it from coming about. User errors are values; exceptions are our own mistakes. */
export type Result<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

export const done = <T>(value: T): Result<T> => ({ ok: true, value });

export const failed = (
  code: string,
  what: string,
  where: string,
  whatToDo: string,
): { ok: false; problem: Problem } => ({
  ok: false,
  problem: { code, what, where, whatToDo },
});

/** The problem as one line: "What (where). What to do." */
export function sayProblem(problem: Problem): string {
  const what = problem.what.replace(/\.$/, '');
  return `${what}${problem.where ? ` (${problem.where})` : ''}. ${problem.whatToDo}`;
}

/** Throws where an assumption of our own does not hold: a bug, never a user's error. */
export function invariant(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`Broken assumption: ${message}`);
}
