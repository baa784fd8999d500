import type { IntendedMove, IntendedMoves } from '../check/intended-moves';
import type { Point } from '../geometry/contour';
import type { ProgramStep } from './program-steps';

/** The moves that steps ask for, without words and exact: the program's text has to say the same. */
export function intendedMoves(steps: readonly ProgramStep[]): IntendedMoves {
  const moves: IntendedMove[] = [];
  const pausesAfter: number[] = [];
  let feed = 0;
  let side: IntendedMove['side'] = 'off';
  let register: number | null = null;
  const add = (to: Point, bulge: number, isRapid: boolean) =>
    moves.push({ isRapid, to, bulge, feed: isRapid ? null : feed, side, register });
  for (const step of steps) {
    switch (step.kind) {
      case 'thread':
        add(step.at, 0, true);
        pausesAfter.push(moves.length);
        break;
      case 'pass':
        feed = step.feed;
        break;
      case 'compensate':
        side = step.side;
        register = step.offsetNumber;
        break;
      case 'stop compensating':
        side = 'off';
        register = null;
        break;
      case 'move':
        add(step.to, step.bulge, false);
        break;
      case 'stop':
        pausesAfter.push(moves.length);
        break;
    }
  }
  return { moves, pausesAfter };
}
