import type { ComparedSet } from '../../core/inspect/compare-set';
import type { AppState } from './app-state';

/** The set of measured points that is looked at, compared; null where there is none. */
export function comparedSet({ inspect }: AppState): ComparedSet | null {
  const set = inspect.measured?.measured[inspect.set];
  return set?.ok ? set.value : null;
}
