import { landTooHigh, noTaper, reliefFindings, type ReliefOwner } from './check/relief-findings';
import { ruledDeviations } from './check/ruled-surface';
import type { Finding } from './finding';
import type { Region } from './geometry/contour';
import type { Cut, Relief } from './plan';
import type { PlannedCut } from './wire/plan-cuts';
import {
  greatestLean,
  levelDistance,
  reliefCuts,
  taperedCuts,
  wallsOf,
  type ReliefPlan,
} from './wire/plan-relief';
import { contourAt } from './wire/taper-chain';
import type { TaperLoop } from './wire/taper-loop';

export interface MemberReliefQuery extends ReliefOwner {
  readonly plan: ReliefPlan;
  readonly designed: Region;
  readonly planned: readonly Pick<PlannedCut, 'cut' | 'layout'>[];
  /** Half the wire and the gap of the pass that makes the wall, square to the wire, mm; its feed, mm/min. */
  readonly cuttingRadius: number;
  readonly feed: number;
  /** Greatest angle of the machine's wire, radians. */
  readonly largestLean: number;
}

export interface MemberRelief {
  readonly cuts: readonly Cut[];
  readonly relief: Relief | null;
  readonly findings: readonly Finding[];
}

/** A die's cuts with its relief, the relief itself and what has to be said of it; upright cuts where there is no way. */
export function memberRelief(query: MemberReliefQuery): MemberRelief {
  const { plan, designed, planned, cuttingRadius, feed, memberId, contourId } = query;
  const owner = { memberId, contourId };
  const upright = planned.map(({ cut }) => cut);
  const without = (finding: Finding): MemberRelief => ({ cuts: upright, relief: null, findings: [finding] });
  if (plan.land >= plan.height) return without(landTooHigh(owner, plan.land, plan.height));
  const made =
    plan.kind === 'one tapered cut'
      ? taperedCuts(upright, plan)
      : reliefCuts({ designed, upright: planned, relief: plan, cuttingRadius, feed });
  if (!made.ok) return without(noTaper(owner, made.at, plan.angle));
  const wallAt = wallsOf(designed, cuttingRadius, plan);
  const first = designed[0]?.[0];
  if (!wallAt) return without(noTaper(owner, first ?? { x: 0, y: 0 }, plan.angle));
  const relief = reliefOf(made.loops, query, wallAt);
  return {
    cuts: made.cuts,
    relief,
    findings: reliefFindings({ ...owner, relief, largestLean: query.largestLean }),
  };
}

/** End of the land, middle, exit face. */
const shares = [0, 0.5, 1] as const;

function reliefOf(
  loops: readonly TaperLoop[],
  { plan, cuttingRadius }: MemberReliefQuery,
  wallAt: (share: number) => Region,
): Relief {
  const height = plan.height - plan.land;
  const { angle: lean, at } = greatestLean(loops, height);
  const deviations = ruledDeviations({ loops, height, cuttingRadius, wallAt }, shares);
  return {
    kind: plan.kind,
    land: plan.land,
    height: plan.height,
    angle: plan.angle,
    greatestLean: lean,
    greatestLeanAt: at,
    levelRadius: levelDistance(cuttingRadius, plan.angle),
    planes: deviations.map(({ share, ...off }) => ({
      depth: plan.land + share * height,
      wall: wallAt(share),
      path: loops.map((loop) => contourAt(loop, share)),
      ...off,
    })),
  };
}
