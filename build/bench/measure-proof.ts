import { proveMember, type FinishedLoop } from '../../core/check/prove-member';
import { offsetRegion } from '../../core/geometry/offset-region';
import type { Region } from '../../core/geometry/contour';
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
  const die = { designed: [outline], loops: finished('inside', offsetRegion([outline], -reach)) };
  const punchContour = offsetRegion([outline], -clearance);
  const punch = { designed: punchContour, loops: finished('outside', offsetRegion(punchContour, reach)) };
  const start = process.cpuUsage();
  const proofs = [
    proveMember(die.designed, 'die', die.loops, reach),
    proveMember(punch.designed, 'punch', punch.loops, reach),
  ];
  const { user, system } = process.cpuUsage(start);
  return {
    segments: outline.length,
    seconds: (user + system) / 1e6,
    passed: proofs.every(({ passed }) => passed),
    gouge: Math.max(...proofs.map(({ gouge }) => gouge)),
  };
}

const finished = (waste: FinishedLoop['waste'], loops: Region): FinishedLoop[] =>
  loops.map((loop) => ({ waste, loop }));

/** Of a 0.25 mm wire and its gap, mm. */
const reach = 0.145;
const clearance = 0.02;
