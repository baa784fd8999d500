import type { DieSetChecks } from './check/die-set/die-set-findings';
import type { LandAndRelief } from './die/regrinds';
import type { PieceContour } from './die/stock-walls';
import type { StripPlan } from './die/strip-plan';
import type { Region } from './geometry/contour';
import { materialOf, type Job } from './job';
import { oneBlockKerf } from './one-block-wire';
import type { DieSetQuery, PlannedDieSet } from './plan-die-set';
import type { Pair } from './plan';
import { reachOf } from './wire/pass-offsets';
import { reliefPlan } from './wire/plan-relief';
import type { BlockGroup } from './wire/block-groups';
import type { WirePasses } from './wire-passes';

export interface PlannedParts {
  readonly piece: readonly PieceContour[];
  readonly placed: readonly PieceContour[];
  readonly pairs: readonly Pair[];
  readonly strip: StripPlan | null;
}

/** What of a job and its plan the die set depends on. */
export function dieSetQuery(
  job: Job,
  clearance: number,
  passes: WirePasses,
  parts: PlannedParts,
): DieSetQuery {
  return {
    ...parts,
    settings: job.dieSet,
    thickness: job.stock.thickness,
    material: materialOf(job),
    clearance,
    reach: {
      die: reachOf(job.wire.diameter, passes.die),
      punch: reachOf(job.wire.diameter, passes.punch),
    },
    heights: job.blocks,
    kerf: oneBlockKerf(job),
    relief: landAndRelief(job),
    perGrind: job.relief.perGrind,
  };
}

/** An opening without relief is straight as high as it likes. */
function landAndRelief({ relief, blocks }: Job): LandAndRelief {
  const plan = reliefPlan(relief, blocks.die);
  return plan ? { land: plan.land, relief: plan.angle } : { land: Infinity, relief: 0 };
}

/** What the findings of a die set are made from. */
export const dieSetChecks = (
  job: Job,
  { dieSet, problems }: PlannedDieSet,
  groups: readonly BlockGroup[],
  pairs: readonly Pair[],
): DieSetChecks => ({
  dieSet,
  knockout: job.dieSet.knockout,
  dieBlocks: groups
    .filter(({ part }) => part === 'die')
    .map(({ id, outline, memberIds }) => ({
      id,
      outline,
      height: job.blocks.die,
      openings: openingsOf(pairs, new Set(memberIds)),
    })),
  problems,
  thickness: job.stock.thickness,
  family: materialOf(job)?.family ?? null,
  largestTaperDeg: job.technology.machine.largestTaperDeg,
});

const openingsOf = (pairs: readonly Pair[], memberIds: ReadonlySet<string>): Region =>
  pairs.flatMap(({ die, use }) => (use !== 'mate' && memberIds.has(die.id) ? die.designed : []));
