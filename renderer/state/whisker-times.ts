import { boxAround, contourBox } from '../../core/geometry/contour-measures';
import { roundExaggeration } from '../../core/inspect/round-exaggeration';
import type { AppState } from './app-state';
import { comparedSet } from './compared-set';

/** The longest whisker as a share of the part's size. */
const share = 0.08;

/** How many times as long deviations are drawn: as chosen, else so that the longest is a small share of the part. */
export function whiskerTimes(state: AppState): number {
  const set = comparedSet(state);
  if (state.inspect.whiskerTimes !== null || !set) return state.inspect.whiskerTimes ?? 1;
  const box = set.target.profile.map(contourBox).reduce(boxAround, contourBox([]));
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const largest = set.comparison.points.reduce(
    (most, { deviation }) => Math.max(most, Math.abs(deviation)),
    0,
  );
  return roundExaggeration(largest, size * share);
}
