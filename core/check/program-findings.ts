import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { ProgramFault } from './program-fault';

/** Faults of one block's program as findings; each is a stop, since a program with a fault must not be cut. */
export function programFindings(blockId: string, faults: readonly ProgramFault[]): readonly Finding[] {
  const shown = faults.slice(0, mostShown).map((fault) => findingOfFault(blockId, fault));
  const rest = faults.length - shown.length;
  return rest === 0
    ? shown
    : [...shown, findingOfFault(blockId, { line: null, say: `${rest} more`, at: null })];
}

/** One fault brings others with it; the first ones tell. */
const mostShown = 5;

function findingOfFault(blockId: string, { line, say, at }: ProgramFault): Finding {
  const where = line === null ? '' : `, line ${line}`;
  return findingOf({
    code: 'proof-program',
    weight: 'stop',
    title: 'The program does not pass its proof',
    message: `Program of ${blockId}${where}: ${say.replace(/\.$/, '')}.`,
    ...(at ? { place: { x: at.x, y: at.y, reach: 1 } } : {}),
    memberId: blockId,
    numbers: line === null ? [] : [{ label: 'line', value: line, kind: 'count' }],
    cures: [
      {
        kind: 'other',
        say: 'Do not cut this program. Change its style, leads or passes; if the fault stays, report it with the job file.',
      },
    ],
  });
}
