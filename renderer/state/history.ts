/** A step of the history: what was done, in words for the menu, and the value on its far side. */
export interface HistoryStep<T> {
  readonly label: string;
  readonly value: T;
}

/** Undo and redo as immutable values. `past` ends with the newest step, `future` begins with the next to redo. */
export interface History<T> {
  readonly past: readonly HistoryStep<T>[];
  readonly present: T;
  readonly future: readonly HistoryStep<T>[];
  /** What the newest step changed, while further changes of the same may still join it; null once it is sealed. */
  readonly open: string | null;
}

/** Steps kept; older ones are forgotten. Jobs share their drawing, so a step costs about a kilobyte. */
const longestPast = 500;

export const newHistory = <T>(present: T): History<T> => ({ past: [], present, future: [], open: null });

/**
 * The history after a change. With a `mergeKey` equal to that of the newest step, while it is open, the change joins
 * that step (turning a value with the arrow keys is one undo). A change to the very same value is no step.
 */
export function record<T>(
  history: History<T>,
  value: T,
  label: string,
  mergeKey: string | null = null,
): History<T> {
  if (value === history.present) return history;
  if (mergeKey !== null && mergeKey === history.open) {
    return { ...history, present: value, future: [] };
  }
  const past = [...history.past, { label, value: history.present }].slice(-longestPast);
  return { past, present: value, future: [], open: mergeKey };
}

/** Ends the newest step: the next change begins one of its own. */
export const sealed = <T>(history: History<T>): History<T> =>
  history.open === null ? history : { ...history, open: null };

/** One step back; the same history where there is none. */
export function undone<T>(history: History<T>): History<T> {
  const step = history.past.at(-1);
  if (!step) return history;
  return {
    past: history.past.slice(0, -1),
    present: step.value,
    future: [{ label: step.label, value: history.present }, ...history.future],
    open: null,
  };
}

/** One step forward again; the same history where there is none. */
export function redone<T>(history: History<T>): History<T> {
  const [step, ...future] = history.future;
  if (!step) return history;
  return {
    past: [...history.past, { label: step.label, value: history.present }],
    present: step.value,
    future,
    open: null,
  };
}

/** What undo and redo would take back or do again, for their menu entries; null where there is nothing. */
export const undoLabel = <T>(history: History<T>): string | null => history.past.at(-1)?.label ?? null;
export const redoLabel = <T>(history: History<T>): string | null => history.future[0]?.label ?? null;
