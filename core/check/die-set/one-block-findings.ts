import type { ProvedOneBlock } from '../../die/die-set';
import type { Finding } from '../../finding';
import { findingOf } from '../../finding-of';
import { tolerance } from '../../geometry/tolerance';
import { sayAngle, sayLength } from '../../say';
import type { Problem } from '../../problem';
import { radians } from '../../units';

/** Whether a contour can be cut as punch and die from one block, and how true the clearance comes out. */
export function oneBlockFindings(
  blocks: readonly ProvedOneBlock[],
  problems: readonly { readonly contourId: string; readonly problem: Problem }[],
  largestTaperDeg: number,
): readonly Finding[] {
  return [
    ...problems.map(({ contourId, problem }) =>
      findingOf({
        code: 'one-block-impossible',
        weight: 'stop',
        title: 'Not out of one block',
        message: `${problem.what}. ${problem.whatToDo}`,
        contourId,
      }),
    ),
    ...blocks.flatMap((block) => [
      ...tooFar(block, largestTaperDeg),
      ...reentrant(block),
      ...uneven(block),
      sensitivity(block),
    ]),
  ];
}

function tooFar({ contourId, solved }: ProvedOneBlock, largestTaperDeg: number): readonly Finding[] {
  if (solved.tilt <= radians(largestTaperDeg)) return [];
  return [
    findingOf({
      code: 'one-block-impossible',
      weight: 'stop',
      title: 'The wire would lean too far',
      message: `The block asks for ${sayAngle(solved.tilt)}; the machine leans the wire by ${largestTaperDeg}° at most.`,
      contourId,
      numbers: [{ label: 'tilt', value: solved.tilt, kind: 'angle' }],
      cures: [{ kind: 'other', say: 'Take a higher block or a thinner wire.' }],
    }),
  ];
}

/** Exact geometry: a re-entrant radius needs r ≥ h·tan θ to keep its shape at both faces. */
function reentrant({ contourId, solved, leastReentrant }: ProvedOneBlock): readonly Finding[] {
  if (leastReentrant === null || leastReentrant >= solved.drift) return [];
  return [
    findingOf({
      code: 'one-block-reentrant',
      weight: 'decide',
      title: 'A re-entrant corner tighter than the lean',
      message:
        `The wire leans out by ${sayLength(solved.drift)} over the block (h·tan θ); a re-entrant radius of ` +
        `${sayLength(leastReentrant)} loses its shape on the way, and the clearance opens there.`,
      contourId,
      numbers: [
        { label: 'radius', value: leastReentrant, kind: 'length' },
        { label: 'drift', value: solved.drift, kind: 'length' },
      ],
      cures: [{ kind: 'other', say: 'Round it, or cut punch and die from blocks of their own.' }],
    }),
  ];
}

function uneven({ contourId, clearance, least, greatest }: ProvedOneBlock): readonly Finding[] {
  const off = Math.max(clearance - least, greatest - clearance);
  if (Number.isFinite(off) && off <= tolerance.uneven) return [];
  return [
    findingOf({
      code: 'one-block-uneven',
      weight: least > 0 ? 'decide' : 'stop',
      title: 'Clearance from one block is uneven',
      message: `The edges of punch and die come to lie ${sayLength(least)} to ${sayLength(greatest)} apart instead of ${sayLength(clearance)}.`,
      contourId,
      numbers: [
        { label: 'least clearance', value: least, kind: 'length' },
        { label: 'greatest clearance', value: greatest, kind: 'length' },
      ],
    }),
  ];
}

function sensitivity({ contourId, solved }: ProvedOneBlock): Finding {
  return findingOf({
    code: 'one-block-sensitive',
    weight: 'note',
    title: `One block at ${sayAngle(solved.tilt)}: how sure the clearance is`,
    message:
      `0.01° more takes ${sayLength(-solved.perHundredthDegree)} of clearance per side; a spark gap wider by 0.01 mm ` +
      `gives ${sayLength(solved.perHundredthGap)}. Cut a test piece first. Each regrind of both faces opens the clearance.`,
    contourId,
    numbers: [{ label: 'tilt', value: solved.tilt, kind: 'angle' }],
  });
}
