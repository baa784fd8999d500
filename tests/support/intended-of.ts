import type { IntendedMoves } from '../../core/check/intended-moves';
import { readProgram } from '../../core/check/read-program';

/** A text's own moves as if they had been intended: a comparison with them finds nothing. Null for no program. */
export function intendedOf(text: string): IntendedMoves | null {
  const reading = readProgram(text);
  if (!reading.ok) return null;
  return {
    moves: reading.value.moves.map(({ kind, to, turn, feed, side, register }) => ({
      isRapid: kind === 'rapid',
      to,
      lean: { x: to.u, y: to.v },
      bulge: Math.tan(turn / 4),
      feed: kind === 'rapid' ? null : feed,
      side,
      register,
    })),
    pauses: reading.value.pauses.map(({ afterMoves, word }) => ({ after: afterMoves, words: [word] })),
  };
}
