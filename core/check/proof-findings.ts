import type { Finding } from '../finding';
import type { Proof } from '../plan';
import { findingOf } from '../finding-of';
import { sayLength } from '../say';

/** What the independent proof found that must not be: a gouge, or stock that no finding speaks of. */
export function proofFindings(
  memberId: string,
  contourId: string,
  proof: Proof,
  /** Deepest stock that is known, mm. */
  known: number,
): readonly Finding[] {
  const findings: Finding[] = [];
  if (proof.gouge > proof.allowed) {
    findings.push(
      findingOf({
        code: 'proof-gouge',
        weight: 'stop',
        title: 'The proof found the wire cutting into the member',
        message: `Swept along its path, the wire cuts ${sayLength(proof.gouge)} into the member; ${sayLength(proof.allowed)} is the accuracy of the proof and the program's last decimal.`,
        ...(proof.gougeAt ? { place: { ...proof.gougeAt, reach: 1 } } : {}),
        memberId,
        contourId,
        numbers: [{ label: 'gouge', value: proof.gouge, kind: 'length' }],
        cures: [
          {
            kind: 'other',
            say: 'Do not cut this path. Report it with the job file: it is a fault of the program.',
          },
        ],
      }),
    );
  }
  if (proof.remainder > known + proof.allowed) {
    findings.push(
      findingOf({
        code: 'proof-remainder',
        weight: 'stop',
        title: 'The proof found stock that no finding explains',
        message: `The sweep leaves ${sayLength(proof.remainder)} of stock, the findings know of ${sayLength(known)}.`,
        ...(proof.remainderAt ? { place: { ...proof.remainderAt, reach: 1 } } : {}),
        memberId,
        contourId,
        numbers: [{ label: 'remainder', value: proof.remainder, kind: 'length' }],
        cures: [
          {
            kind: 'other',
            say: 'Do not cut this path. Report it with the job file: it is a fault of the program.',
          },
        ],
      }),
    );
  }
  return findings;
}
