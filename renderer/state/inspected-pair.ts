import type { Pair } from '../../core/plan';
import type { AppState } from './app-state';

/** The pair whose clearance is looked at; null where the plan has none. */
export function inspectedPair({ made, inspect }: AppState): Pair | null {
  const pairs = made?.plan.pairs ?? [];
  return pairs.find(({ contourId }) => contourId === inspect.contourId) ?? pairs[0] ?? null;
}
