import type { Finding } from '../finding';
import { tolerance } from '../geometry/tolerance';
import type { Member } from '../plan';
import { proofFindings } from './proof-findings';
import { proveMember } from './prove-member';

/**
 * The planes of a relief above the program's own by the independent proof: a disc of the level cutting radius swept
 * along the path there. How much farther a wire reaches that leans more than the wall, the surface check knows and
 * says; only what is deeper than that is news.
 */
export function proveRelief({
  id,
  contourId,
  relief,
}: Pick<Member, 'id' | 'contourId' | 'relief'>): readonly Finding[] {
  return (relief?.planes.slice(1) ?? []).flatMap(({ wall, path, gouge }) => {
    const finished = path.map((loop) => ({ waste: 'inside' as const, loop }));
    const proof = proveMember(wall, 'die', finished, relief?.levelRadius ?? 0);
    if (proof.gouge <= tolerance.proofGouge + gouge) return [];
    return proofFindings(id, contourId, { ...proof, remainder: 0 }, 0);
  });
}
