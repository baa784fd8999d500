import { cornerFit, type CornerFit } from '../../core/die/corner-fit';
import { pairCorners, type PairCorner } from '../../core/die/corner-radii';
import { sizeContour } from '../../core/die/size-contour';
import type { Job } from '../../core/job';
import type { Plan, Use } from '../../core/plan';
import type { CornerName } from '../state/app-state';

export interface CornerFacts {
  readonly corner: PairCorner;
  readonly fit: CornerFit;
  readonly use: Use;
  /** mm. */
  readonly clearance: number;
  readonly reach: Plan['reach'];
}

/** What the job's rules make of a corner of the drawing; null where the plan does not have it. */
export function cornerFacts(job: Job, plan: Plan, { contourId, x, y }: CornerName): CornerFacts | null {
  const pair = plan.pairs.find((one) => one.contourId === contourId);
  const drawn = plan.drawing.contours.find(({ id }) => id === contourId)?.contour;
  if (!pair || !drawn) return null;
  const { sizeShift, gap: clearance } = pair;
  const { corners } = pairCorners({
    contourId,
    drawn: sizeContour(drawn, sizeShift)[0] ?? drawn,
    use: pair.use,
    clearance,
    reach: plan.reach,
    rules: job.corners,
    sizeShift,
  });
  const [corner] = [...corners].sort(
    (a, b) => Math.hypot(a.place.at.x - x, a.place.at.y - y) - Math.hypot(b.place.at.x - x, b.place.at.y - y),
  );
  return corner
    ? { corner, fit: cornerFit(corner, clearance, plan.reach), use: pair.use, clearance, reach: plan.reach }
    : null;
}
