import type { MeasuredPairOf } from '../../core/inspect/inspection';
import type { AppState } from './app-state';

/** The measured pair whose real clearance the picture shows; null where it shows deviations. */
export function shownPair({ inspect }: AppState): MeasuredPairOf | null {
  const { measured, shownPairId } = inspect;
  return measured?.measuredPairs.find(({ contourId }) => contourId === shownPairId) ?? null;
}
