import { proveMember } from '../../core/check/prove-member';
import { pairContours } from '../../core/die/pair-contours';
import { newJob } from '../../core/job';
import { passOffsets, reachOf } from '../../core/wire/pass-offsets';
import { planCuts } from '../../core/wire/plan-cuts';
import { filletedOutline } from './outlines';

export interface ProofMeasure {
  readonly segments: number;
  readonly seconds: number;
  readonly passed: boolean;
  readonly gouge: number;
}

/** The independent proof of punch and die of an outline of 10,000 lines and arcs. */
export function measureProof(): ProofMeasure {
  const outline = filletedOutline(10_000);
  const job = newJob('outline.dxf', '');
  const offsets = passOffsets(job.wire.diameter, job.passes);
  if (!offsets.ok) throw new Error(offsets.problem.what);
  const reach = reachOf(job.wire.diameter, job.passes);
  const designed = pairContours(outline, 'blank', clearance, { punch: 0, die: 0 });
  const members = (['die', 'punch'] as const).map((role) => ({
    role,
    cuts: planCuts(designed[role], role, offsets.value, job.lead).map(({ cut }) => cut),
  }));
  const start = performance.now();
  const proofs = members.map(({ role, cuts }) => proveMember(designed[role], role, cuts, reach));
  return {
    segments: outline.length,
    seconds: (performance.now() - start) / 1000,
    passed: proofs.every(({ passed }) => passed),
    gouge: Math.max(...proofs.map(({ gouge }) => gouge)),
  };
}

const clearance = 0.02;
