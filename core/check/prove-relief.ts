import type { Finding } from '../finding';
import type { Member, Relief } from '../plan';
import { besideLoop } from './beside-loop';
import { closedLoop } from './closed-loop';
import { movesInPlane } from './moves-in-plane';
import type { ProgramFault } from './program-fault';
import { proofFindings } from './proof-findings';
import { proveMember, type FinishedLoop } from './prove-member';
import type { WireMove } from './wire-path';

/** What the proof of a relief found, and where the text does not make it. */
export interface ReliefProof {
  readonly findings: readonly Finding[];
  readonly faults: readonly ProgramFault[];
}

/**
 * The planes of a relief by the independent proof: the loops that the text's own moves close there, U and V included,
 * swept by a disc of the level cutting radius. How much farther a wire reaches that leans more than the wall, and what
 * chords leave, the surface check knows and says; only what is deeper than that is news.
 */
export function proveRelief(
  member: Omit<Member, 'proof'>,
  moves: readonly WireMove[],
  step: number,
): ReliefProof {
  const { relief } = member;
  if (!relief) return { findings: [], faults: [] };
  const planes = relief.planes.map((plane) => provePlane(member, relief, plane, moves, step));
  return {
    findings: planes.flatMap(({ findings }) => findings),
    faults: planes.flatMap(({ faults }) => faults),
  };
}

function provePlane(
  { id, contourId, cuts }: Omit<Member, 'proof'>,
  { land, height, levelRadius }: Relief,
  { depth, wall, path, gouge, remainder }: Relief['planes'][number],
  moves: readonly WireMove[],
  step: number,
): ReliefProof {
  // In the plane of the land's end upright passes run close by; a wire that stands upright makes none of the surface.
  const own = movesInPlane(moves, (depth - land) / (height - land)).map((move) =>
    isUpright(move) ? { ...move, isRapid: true } : move,
  );
  const leaning = cuts.filter(({ passes }) => passes.at(-1)?.lean);
  const loops = path.map((wanted, k) => {
    const passes = leaning[k]?.passes ?? [];
    return closedLoop(own, wanted, besideLoop(passes, passes.length - 1, step));
  });
  const faults = loops.flatMap(({ fault }) => (fault ? [fault] : []));
  if (faults.length > 0) return { findings: [], faults };
  const finished = loops.flatMap(({ loop }): FinishedLoop[] => (loop ? [{ waste: 'inside', loop }] : []));
  const proof = proveMember(wall, 'die', finished, levelRadius, step);
  const allowed = proof.allowed + gouge;
  return { findings: proofFindings(id, contourId, { ...proof, allowed }, remainder), faults };
}

const isUpright = ({ leanFrom, leanTo }: WireMove): boolean =>
  leanFrom.x === 0 && leanFrom.y === 0 && leanTo.x === 0 && leanTo.y === 0;
